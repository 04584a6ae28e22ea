const dayLength = 86_400_000
const form = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})\.(\d{3})Z$/

/**
 * Days from 1970-01-01 to a day of the Gregorian calendar.
 *
 * Source: from 1 March on, months have 153 days in five; four years have one day more, a hundred one less, four hundred one
 * more again (Richards, Explanatory Supplement to the Astronomical Almanac, 3rd edition, 15.11).
 */
function daysTo(year: number, month: number, day: number): number {
  const shifted = (month + 9) % 12
  const from = year - (month < 3 ? 1 : 0)
  const leaps = Math.floor(from / 4) - Math.floor(from / 100) + Math.floor(from / 400)
  return 365 * from + leaps + Math.floor((153 * shifted + 2) / 5) + day - 1 - 719_468
}

/** Milliseconds since 1970 of a moment written like 2026-11-27T10:00:00.123Z, from then on; null: written otherwise. */
export function readMoment(text: string): number | null {
  const parts = form.exec(text)
  if (!parts) return null
  const [year, month, day, hour, minute, second, thousandth] = parts.slice(1).map(Number) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  if (year < 1970 || month < 1 || month > 12) return null
  const value = daysTo(year, month, day) * dayLength + ((hour * 60 + minute) * 60 + second) * 1000 + thousandth
  // A 31 April or a 25 o'clock is some other moment: only what is written back alike is taken.
  return writeMoment(value) === text ? value : null
}

const digits = (value: number, width: number): string => String(value).padStart(width, '0')

/** The moment's text in UTC with milliseconds. */
export function writeMoment(milliseconds: number): string {
  const days = Math.floor(milliseconds / dayLength)
  const rest = milliseconds - days * dayLength
  let year = 1970 + Math.floor(days / 365.2425)
  while (daysTo(year + 1, 1, 1) <= days) year++
  while (daysTo(year, 1, 1) > days) year--
  let month = 12
  while (daysTo(year, month, 1) > days) month--
  const day = days - daysTo(year, month, 1) + 1
  const date = `${digits(year, 4)}-${digits(month, 2)}-${digits(day, 2)}`
  const time = [Math.floor(rest / 3_600_000), Math.floor(rest / 60_000) % 60, Math.floor(rest / 1000) % 60]
  return `${date}T${time.map((part) => digits(part, 2)).join(':')}.${digits(rest % 1000, 3)}Z`
}
