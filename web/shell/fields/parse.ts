export interface NumberRules {
  min?: number
  max?: number
  /** Above min, not at it. */
  above?: number
  whole?: boolean
  /** Shown and typed in per cent, kept from 0 to 1. */
  percent?: boolean
}

export type Read = { value: number } | { error: string }

/** Reads a typed number: decimal comma or point, an optional unit behind it, in the limits given. */
export function readNumber(text: string, rules: NumberRules = {}): Read {
  const bare = text
    .trim()
    .replace(/\s*(s|m\/s²|m\/s|m|kg|%|×)$/, '')
    .replace(/^×\s*/, '')
    .replace(',', '.')
    .replace('\u2212', '-')
  if (bare === '') return { error: 'Please give a number.' }
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(bare)) return { error: `‘${text.trim()}’ is not a number; write it like 1.5.` }
  const typed = Number(bare)
  if (rules.whole && !Number.isInteger(typed)) return { error: `A whole number is needed, not ${bare}.` }
  const unit = rules.percent ? 100 : 1
  const suffix = rules.percent ? ' %' : ''
  const value = rules.percent ? Number((typed / 100).toPrecision(12)) : typed
  if (rules.min !== undefined && value < rules.min)
    return { error: `At least ${rules.min * unit}${suffix}, not ${bare}${suffix}.` }
  if (rules.above !== undefined && value <= rules.above)
    return { error: `More than ${rules.above * unit}${suffix}, not ${bare}${suffix}.` }
  if (rules.max !== undefined && value > rules.max)
    return { error: `At most ${rules.max * unit}${suffix}, not ${bare}${suffix}.` }
  return { value }
}

/** A kept number as it is shown in its field. */
export function writeNumber(value: unknown, rules: NumberRules = {}): string {
  if (typeof value !== 'number') return ''
  return String(Number((rules.percent ? value * 100 : value).toPrecision(10)))
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
  if (parts.length < 3) return { error: `At least 3 measured times are needed, got ${parts.length}.` }
  return { values: reads.map((read) => (read as { value: number }).value) }
}
