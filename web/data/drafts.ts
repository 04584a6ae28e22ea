import type { DocumentKind } from '../../src/model/documents/records.ts'

/** An edit that is kept in this browser until it is saved. */
export interface Kept<T> {
  base: number
  value: T
  at: string
}

/** The part of the browser's storage that is used; a list of keys besides. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>

const prefix = (kind: DocumentKind, id: string) => `cyclewright/draft/${kind}/${id}`

/** Each tab keeps its own edit, so that two tabs on one document take nothing from each other. */
const keyOf = (kind: DocumentKind, id: string, tab: string) => `${prefix(kind, id)}#${tab}`

function read<T>(shelf: Shelf, key: string): Kept<T> | null {
  try {
    return JSON.parse(shelf.getItem(key) ?? 'null') as Kept<T> | null
  } catch {
    return null
  }
}

/** A draft that was found, and the key that it was found under. */
export interface Found<T> {
  kept: Kept<T>
  key: string
}

/** This tab's own draft of a document, else the newest that any other tab left. */
export function findDraft<T>(shelf: Shelf, kind: DocumentKind, id: string, tab: string): Found<T> | null {
  try {
    const own = keyOf(kind, id, tab)
    const mine = read<T>(shelf, own)
    if (mine) return { kept: mine, key: own }
    const keys = Array.from({ length: shelf.length }, (_, index) => shelf.key(index) ?? '')
    const found = keys
      .filter((key) => key === prefix(kind, id) || key.startsWith(`${prefix(kind, id)}#`))
      .flatMap((key) => {
        const kept = read<T>(shelf, key)
        return kept ? [{ kept, key }] : []
      })
    return found.sort((a, b) => b.kept.at.localeCompare(a.kept.at))[0] ?? null
  } catch {
    return null
  }
}

/**
 * Keeps this tab's edit; `null`: there is none any more. An edit that was taken over from another tab goes with it, unless
 * that tab has gone on since.
 */
export function keepDraft<T>(
  shelf: Shelf,
  of: { kind: DocumentKind; id: string; tab: string; from: Found<T> | null },
  kept: Kept<T> | null,
): void {
  const own = keyOf(of.kind, of.id, of.tab)
  try {
    if (kept) shelf.setItem(own, JSON.stringify(kept))
    else shelf.removeItem(own)
    const { from } = of
    if (!kept && from && read<T>(shelf, from.key)?.at === from.kept.at) shelf.removeItem(from.key)
  } catch {
    // A full or forbidden storage costs the copy, not the edit on the screen.
  }
}

const tabKey = 'cyclewright/tab'

/** A name for this tab that stays over reloads. */
export function tabName(session: Pick<Storage, 'getItem' | 'setItem'>, fresh: () => string): string {
  try {
    const known = session.getItem(tabKey)
    if (known) return known
    const name = fresh()
    session.setItem(tabKey, name)
    return name
  } catch {
    return fresh()
  }
}
