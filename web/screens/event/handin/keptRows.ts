import type { Row } from '../../../../src/model/scouting/types.ts'

const key = (event: string) => `cyclewright/keyed/${event}`
const counter = 'cyclewright/sequence'

/** Keyed records that the server has not acknowledged: kept in the browser, because the paper may be gone by then. */
export function keptRows(event: string): Row[] {
  try {
    return JSON.parse(localStorage.getItem(key(event)) ?? '[]') as Row[]
  } catch {
    return []
  }
}

export function keepRows(event: string, rows: readonly Row[]): void {
  try {
    if (rows.length > 0) localStorage.setItem(key(event), JSON.stringify(rows))
    else localStorage.removeItem(key(event))
  } catch {
    // They stay on the page, which asks before it is closed.
  }
}

let forNow = 0

/** Counts what this browser records. */
export function nextSequence(): number {
  try {
    const next = Math.max(forNow, Number(localStorage.getItem(counter) ?? 0)) + 1
    forNow = next
    localStorage.setItem(counter, String(next))
    return next
  } catch {
    forNow += 1
    return forNow
  }
}
