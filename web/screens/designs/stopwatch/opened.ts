import type { Game } from '../../../../src/model/documents/types.ts'
import type { Stored } from '../../../data/documents.ts'

/** What the stopwatch's page is about. */
export interface Opened {
  stored: Stored<'design'>
  game: Game
}

interface Kept extends Opened {
  /** When it came from the server (ms since 1970). */
  at: number
}

const key = 'cyclewright/timed-designs'
/** Nobody times more robots than these on one field. */
const most = 4

function all(): Kept[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? '[]')
    return Array.isArray(found) ? (found as Kept[]) : []
  } catch {
    return []
  }
}

/** What was opened here last of a design, for when the server does not answer. */
export const readOpened = (id: string): Kept | null => all().find(({ stored }) => stored.id === id) ?? null

export function keepOpened(opened: Opened, at: number): void {
  const others = all().filter(({ stored }) => stored.id !== opened.stored.id)
  try {
    localStorage.setItem(key, JSON.stringify([{ ...opened, at }, ...others].slice(0, most)))
  } catch {
    // Without storage the page needs the server; the times of this visit are taken all the same.
  }
}
