const minus = '\u2212'
const space = '\u00a0'

const fixed = (value: number, digits: number): string => {
  const text = Math.abs(value).toFixed(digits)
  return value < 0 && Number(text) !== 0 ? minus + text : text
}

/** Points to 0.1: '12.3'. */
export const points = (value: number): string => fixed(value, 1)

/** Points with their sign, for differences: '+2.1', '−0.4', '0.0'. */
export const signedPoints = (value: number): string =>
  Number(value.toFixed(1)) > 0 ? `+${points(value)}` : points(value)

/** Seconds to 0.1 with their unit: '4.2 s'. */
export const seconds = (value: number): string => `${fixed(value, 1)}${space}s`

/** Probability to 1 %, never a false certainty: '62 %', 'under 1 %', 'over 99 %'. */
export const percent = (probability: number): string => {
  const whole = Math.round(probability * 100)
  if (whole === 0 && probability > 0) return `under 1${space}%`
  if (whole === 100 && probability < 1) return `over 99${space}%`
  return `${whole}${space}%`
}

/** A number with no more digits than it needs, at most `digits`: '1.12', '3', '0.5'. */
export const plain = (value: number, digits = 2): string =>
  fixed(Number(value.toFixed(digits)), digits).replace(/\.?0+$/, '')

/** A date as people write it: '25 November 2026'. */
export const day = (iso: string): string => {
  const date = new Date(iso)
  return Number.isNaN(date.getTime())
    ? iso
    : date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })
}

/** A moment: '25 Nov 2026, 14:05'. */
export const moment = (iso: string): string => {
  const date = new Date(iso)
  return Number.isNaN(date.getTime())
    ? iso
    : date.toLocaleString('en-GB', {
        day: 'numeric',
        month: 'short',
        year: 'numeric',
        hour: '2-digit',
        minute: '2-digit',
      })
}

/** A list in words: 'a, b and c'. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`

/** '1 match', '3 matches'. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count}${space}${count === 1 ? one : many}`
