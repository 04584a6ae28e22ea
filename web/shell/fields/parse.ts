import { type Measured, type System, unitOf } from '../../units/quantities.ts'
import { readQuantity } from '../../units/read.ts'
import { sayQuantity, shownValue } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { plain, typedNumber } from '../../words/format.ts'

export interface NumberRules {
  min?: number
  max?: number
  /** Above min, not at it. */
  above?: number
  whole?: boolean
  /** Shown and typed in per cent, kept from 0 to 1. */
  percent?: boolean
  /** Kept in SI, shown and typed in the units chosen; the limits are SI. */
  quantity?: Measured
  /** Decimals beyond which nothing is shown; what is kept stays as it is. */
  digits?: number
}

export type Read = { value: number } | { error: string }

/** A limit as the field says it, and what was typed beside it. */
function limitWords(limit: number, bare: string, rules: NumberRules, system: System): [string, string] {
  if (!rules.quantity) {
    const suffix = rules.percent ? ' %' : ''
    return [`${plain(limit * (rules.percent ? 100 : 1), 6)}${suffix}`, `${typedNumber(bare)}${suffix}`]
  }
  return [sayQuantity(limit, rules.quantity, system), bare]
}

/** A value within its limits, or the sentence about the one that it breaks; `bare`: as it was typed. */
export function limited(value: number, bare: string, rules: NumberRules, system: System): Read {
  const texts = words().units
  const said = (limit: number) => limitWords(limit, bare, rules, system)
  if (rules.min !== undefined && value < rules.min) return { error: texts.atLeast(...said(rules.min)) }
  if (rules.above !== undefined && value <= rules.above) return { error: texts.moreThan(...said(rules.above)) }
  if (rules.max !== undefined && value > rules.max) return { error: texts.atMost(...said(rules.max)) }
  return { value }
}

/** Reads a typed number: decimal comma or point, an optional unit behind it, in the limits given. */
export function readNumber(text: string, rules: NumberRules = {}, system: System = 'metric'): Read {
  const texts = words().units
  if (text.trim() === '') return { error: texts.none }
  if (rules.quantity) {
    const value = readQuantity(text, rules.quantity, system)
    return value === null
      ? {
          error:
            typeof rules.quantity === 'string'
              ? texts.noQuantity(text.trim(), rules.quantity)
              : rules.quantity.refuse(text.trim()),
        }
      : limited(value, text.trim(), rules, system)
  }
  const bare = text
    .trim()
    .replace(/\s*(s|m\/s²|m\/s|m|kg|%|×)$/, '')
    .replace(/^×\s*/, '')
    .replace(',', '.')
    .replace('\u2212', '-')
  if (bare === '') return { error: texts.none }
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare)) return { error: texts.noNumber(text.trim()) }
  const typed = Number(bare)
  if (rules.whole && !Number.isInteger(typed)) return { error: texts.whole(typedNumber(bare)) }
  const value = rules.percent ? Number((typed / 100).toPrecision(12)) : typed
  return limited(value, bare, rules, system)
}

/** A kept number as it is shown in its field. */
export function writeNumber(value: unknown, rules: NumberRules = {}, system: System = 'metric'): string {
  return typeof value === 'number' ? typedNumber(String(shownNumber(value, rules, system))) : ''
}

/** A kept number in the unit of its field, with the digits shown there. */
export function shownNumber(value: number, rules: NumberRules = {}, system: System = 'metric'): number {
  if (rules.quantity) return shownValue(value, rules.quantity, system)
  const shown = Number((rules.percent ? value * 100 : value).toPrecision(10))
  return rules.digits === undefined ? shown : Number(shown.toFixed(rules.digits))
}

/**
 * What one press of an arrow key adds in the unit shown: about as much as the metric step, but a round number. The step of
 * a measure of its own is in the unit shown already.
 */
export function stepShown(step: number, rules: NumberRules, system: System): number {
  if (typeof rules.quantity !== 'string' || system === 'metric') return step
  const wanted = step / unitOf(rules.quantity, system).factor
  return [0.1, 0.25, 0.5, 1, 2, 5].reduce((best, round) =>
    Math.abs(Math.log(round / wanted)) < Math.abs(Math.log(best / wanted)) ? round : best,
  )
}

/** Measured times typed with spaces, commas with spaces, semicolons or line ends between them. */
export function readTimes(text: string): { values: number[] } | { error: string } {
  const parts = text
    .split(/[\s;]+/)
    .map((part) => part.replace(/,$/, ''))
    .filter((part) => part !== '')
  const reads = parts.map((part) => readNumber(part, { min: 0, max: 600 }))
  const wrong = reads.find((read): read is { error: string } => 'error' in read)
  if (wrong) return wrong
  if (parts.length < 3) return { error: words().units.fewTimes(parts.length) }
  return { values: reads.map((read) => (read as { value: number }).value) }
}
