import type { QuickLeg } from '../../../src/model/documents/quickSheet.ts'
import { readNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

/** Longest time that a leg may be said to take (s). */
export const longest = 600

/** A leg's time as typed: one number, or low, likely and high with spaces, dashes or slashes between them. */
export function readTime(text: string): { time: QuickLeg['time'] } | { error: string } {
  const texts = words().quickSheet.ways
  const parts = text
    .replace(/\bs\b/g, ' ')
    .trim()
    .split(/\s*[–/;]\s*|\s+-\s+|(?<=\d)-(?=\d)|\s+/)
    .filter((part) => part !== '')
  if (parts.length !== 1 && parts.length !== 3) return { error: texts.wrongTime(text.trim()) }
  const reads = parts.map((part) => readNumber(part))
  const numbers = reads.map((read) => ('value' in read ? read.value : Number.NaN))
  if (numbers.some(Number.isNaN)) return { error: texts.wrongTime(text.trim()) }
  if (numbers.some((value) => value < 0 || value > longest)) return { error: texts.outside(longest) }
  const [low, likely, high] = numbers as [number, number, number]
  if (numbers.length === 1) return { time: { kind: 'fixed', seconds: low } }
  if (low > likely || likely > high) return { error: texts.wrongOrder }
  return { time: { kind: 'range', low, likely, high } }
}

/** '8', or '5 8 14'. */
export const writeTime = (time: QuickLeg['time']): string =>
  time.kind === 'fixed'
    ? plain(time.seconds)
    : [time.low, time.likely, time.high].map((value) => plain(value)).join(' ')
