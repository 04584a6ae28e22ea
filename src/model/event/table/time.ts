import type { Cells } from './cells.ts'

/** '14:05', '2031-02-28 14:05' or a full moment with its offset, as a moment; null where the cell is empty or can not be read. */
export function readTime(row: Cells, { day, offset }: { day?: string | undefined; offset: string }): string | null {
  const text = row.text('time')
  if (text === '') return null
  const parts = /^(?:(\d{4}-\d{2}-\d{2})[T ]+)?(\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*(Z|[+-]\d{2}:\d{2})?$/i.exec(
    text,
  )
  const [, date = day, hours, minutes, seconds = '00', zone = offset] = parts ?? []
  if (parts && date !== undefined && Number(hours) < 24 && Number(minutes) < 60 && Number(seconds) < 60)
    return `${date}T${hours!.padStart(2, '0')}:${minutes}:${seconds}${zone.toUpperCase()}`
  row.faults.push({ column: 'time', fault: 'noTime', got: text })
  return null
}
