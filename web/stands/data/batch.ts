import type { Kept } from './database.ts'

/** Rows of one request at most, and its size (characters of JSON): the server reads 200 rows and 2 MB. */
export const mostRows = 200
const mostCharacters = 1_000_000

/** The next rows to send: of one device, in its order, as many as one request holds, and one in any case. */
export function batchOf(rows: readonly Kept[], most = mostRows): Kept[] {
  const device = rows[0]?.device
  const own = rows.filter((row) => row.device === device).sort((a, b) => a.sequence - b.sequence)
  let characters = 0
  const full = own.findIndex(({ row }, index) => {
    characters += JSON.stringify(row).length
    return index > 0 && (index >= most || characters > mostCharacters)
  })
  return full < 0 ? own : own.slice(0, full)
}
