import type { Cells } from './cells.ts'

export interface Day {
  /** The day of times without one (YYYY-MM-DD). */
  day?: string | undefined
  /** What follows times without it: 'Z' or an offset such as '+01:00'. */
  offset: string
}

const form =
  /^(?:(\d{4}-\d{2}-\d{2})[T ]+|(\d{1,2})\.(\d{1,2})\.(\d{4})[, ]+)?(\d{1,2})[:.](\d{2})(?::(\d{2})(?:\.\d+)?)?\s*(?:(am|pm)|uhr)?\s*(Z|[+-]\d{2}:\d{2})?$/i

/** '14:05', '2:05 pm', '14.05 Uhr', '2031-02-28 14:05', '28.2.2031 14:05' or a full moment with its offset, as a moment; null: no time. */
export function momentOf(text: string, { day, offset }: Day): string | null {
  const parts = form.exec(text.trim())
  // What a spreadsheet writes of a time without its form, a part of a day, is no time with a dot in it.
  if (!parts || /^0\.\d+$/.test(text.trim())) return null
  const [, iso, dayOfMonth, month, year, typed, minutes, seconds = '00', half, zone = offset] = parts
  const two = (part: string | number | undefined) => String(part).padStart(2, '0')
  const date = iso ?? (year === undefined ? day : `${year}-${two(month)}-${two(dayOfMonth)}`)
  const hours = half === undefined ? Number(typed) : hourOf(Number(typed), half.toLowerCase() === 'pm')
  if (date === undefined || !isDay(date) || hours === null || hours > 23) return null
  if (Number(minutes) > 59 || Number(seconds) > 59) return null
  return `${date}T${two(hours)}:${minutes}:${seconds}${zone.toUpperCase()}`
}

/** Of a day in two halves, which begin at 12; null: no hour of one. */
const hourOf = (hour: number, afternoon: boolean): number | null =>
  hour < 1 || hour > 12 ? null : (hour % 12) + (afternoon ? 12 : 0)

/** The 30th of February is none. */
function isDay(date: string): boolean {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number)
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0
  return day >= 1 && day <= days
}

/** The time of a line; null where the cell is empty or can not be read. */
export function readTime(row: Cells, of: Day): string | null {
  const text = row.text('time')
  if (text === '') return null
  const moment = momentOf(text, of)
  if (moment === null) row.faults.push({ column: 'time', fault: 'noTime', got: text })
  return moment
}
