import { locale, words } from './catalogue.ts'

const minus = '\u2212'
const space = '\u00a0'

const kept = new Map<string, unknown>()

/** Formatters are costly to make, and few. */
function formatter<T>(key: string, make: (language: string) => T): T {
  const name = `${locale()} ${key}`
  const known = kept.get(name)
  if (known) return known as T
  const made = make(locale())
  kept.set(name, made)
  return made
}

/** With a true minus, and no minus before zero. No thousands are marked off: what is shown can be typed back. */
function number(value: number, options: Intl.NumberFormatOptions): string {
  const { format } = formatter(
    JSON.stringify(options),
    (language) => new Intl.NumberFormat(language, { useGrouping: false, signDisplay: 'negative', ...options }),
  )
  return format(value).replace('-', minus)
}

const fixed = (value: number, digits: number, signDisplay: 'negative' | 'exceptZero' = 'negative'): string =>
  number(value, { minimumFractionDigits: digits, maximumFractionDigits: digits, signDisplay })

/** Points to 0.1: '12.3'. */
export const points = (value: number): string => fixed(value, 1)

/** Points with their sign, for differences: '+2.1', '−0.4', '0.0'. */
export const signedPoints = (value: number): string => fixed(value, 1, 'exceptZero')

/** Seconds to 0.1 with their unit: '4.2 s'. */
export const seconds = (value: number): string => `${fixed(value, 1)}${space}s`

/** Probability to 1 %, never a false certainty: '62 %', 'under 1 %', 'over 99 %'. */
export const percent = (probability: number): string => {
  const whole = Math.round(probability * 100)
  if (whole === 0 && probability > 0) return words().format.under(`1${space}%`)
  if (whole === 100 && probability < 1) return words().format.over(`99${space}%`)
  return `${whole}${space}%`
}

/** A number with no more digits than it needs, at most `digits`: '1.12', '3', '0.5'. */
export const plain = (value: number, digits = 2): string => number(value, { maximumFractionDigits: digits })

/** A number as it stands in a field: `text` as written by the machine, with the language's decimal sign. */
export const typedNumber = (text: string): string => {
  const sign = formatter('decimal', (language) => new Intl.NumberFormat(language).formatToParts(1.5)[1]?.value ?? '.')
  return text.replace('.', sign)
}

const dated = (iso: string, options: Intl.DateTimeFormatOptions): string => {
  const date = new Date(iso)
  if (Number.isNaN(date.getTime())) return iso
  return formatter(JSON.stringify(options), (language) => new Intl.DateTimeFormat(language, options)).format(date)
}

/** A date as people write it: '25 November 2026'. */
export const day = (iso: string): string =>
  dated(iso, { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })

/** A moment: '25 Nov 2026, 14:05'. */
export const moment = (iso: string): string =>
  dated(iso, { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' })

/** A list in words: 'a, b and c'. */
export const listed = (items: readonly string[]): string =>
  formatter('list', (language) => new Intl.ListFormat(language, { type: 'conjunction' })).format(items)

/** '1 match', '3 matches'. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count}${space}${count === 1 ? one : many}`
