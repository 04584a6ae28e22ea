import { type Measured, readable, type System, smaller, units } from './quantities.ts'

const fraction = /^(?:(\d+)[\s-]+)?(\d+)\s*[/⁄]\s*(\d+)/
const decimal = /^(\d+(?:[.,]\d*)?|[.,]\d+)/
const unit = /^(''|["″”'′’]|[a-zß]+(?:\/[a-z]+(?:²|\^?2)?)?)/i

interface Term {
  value: number
  factor: number | null
}

function termsOf(text: string, known: { readonly [written: string]: number }): Term[] | null {
  const terms: Term[] = []
  let rest = text
  while (rest !== '') {
    const parts = fraction.exec(rest)
    const plain = parts ? null : decimal.exec(rest)
    const number = parts ?? plain
    if (!number) return null
    const value = parts
      ? Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3])
      : Number(plain![1]!.replace(',', '.'))
    rest = rest.slice(number[0].length).trimStart()
    const written = unit.exec(rest)
    if (written && !Object.hasOwn(known, written[1]!.toLowerCase())) return null
    terms.push({ value, factor: written ? known[written[1]!.toLowerCase()]! : null })
    if (written) rest = rest.slice(written[0].length).trimStart()
    else if (rest !== '') return null
  }
  return terms.length > 0 && terms.every(({ value }) => Number.isFinite(value)) ? terms : null
}

/**
 * Reads a quantity as people write it: `36 in`, `3 ft 2 in`, `3' 2 1/2"`, `0.9 m`, `90 cm`, `12 lb 8 oz`, or a bare number
 * in the unit shown. The answer is SI; null where it can not be read. Several units must become smaller.
 */
export function readQuantity(text: string, quantity: Measured, system: System): number | null {
  if (typeof quantity !== 'string') return quantity.read(text, system)
  const bare = text.trim().replace('\u2212', '-')
  const sign = bare.startsWith('-') ? -1 : 1
  const terms = termsOf(bare.replace(/^[+-]\s*/, ''), readable[quantity])
  if (!terms) return null
  let sum = 0
  let before: number | null = null
  for (const { value, factor } of terms) {
    const next: number | undefined =
      factor ?? (before === null ? units[system][quantity].factor : smaller.find(([larger]) => larger === before)?.[1])
    if (next === undefined || (before !== null && next >= before)) return null
    sum += value * next
    before = next
  }
  return sign * Number(sum.toPrecision(12))
}

/** Whether a text is a number alone, whose unit is the one that was shown when it was typed. */
export const isBare = (text: string): boolean => /^\s*[+\u2212-]?\s*[\d.,\s/]+$/.test(text)
