import { useCallback, useEffect, useMemo, useReducer } from 'react'
import type { DocumentKind } from '../../src/model/documents/records.ts'
import { type Place, same } from './difference.ts'
import { type Found, findDraft, keepDraft, tabName } from './drafts.ts'
import { begin, change, type History, pause, redo, undo } from './history.ts'
import { withValueAt } from './place.ts'

let tab: string | null = null

const thisTab = (): string => (tab ??= tabName(sessionStorage, () => crypto.randomUUID()))

/** Whether this browser holds edits of a document that are not saved. */
export const hasDraft = (kind: DocumentKind, id: string): boolean =>
  findDraft(localStorage, kind, id, thisTab()) !== null

interface State<T> {
  history: History<T>
  base: number
  saved: T
  /** When the edits that were found in this browser had been made; null where there were none. */
  foundFrom: string | null
  /** What was found in this browser when the document was opened. */
  found: Found<T> | null
}

type Step<T> =
  | { kind: 'set'; place: Place; value: unknown; group: string | null }
  | { kind: 'replace'; value: T }
  | { kind: 'undo' | 'redo' | 'pause' | 'discard' }
  | { kind: 'saved'; base: number; saved: T; value: T }

/** What has to follow an edit within the same step of undo, and nothing else: the same for the same two values. */
export type Follow<T> = (before: T, after: T) => T

function step<T>(state: State<T>, action: Step<T>, follow: Follow<T>): State<T> {
  const { history } = state
  const next = (value: T) => follow(history.present, value)
  switch (action.kind) {
    case 'set':
      return {
        ...state,
        history: change(history, next(withValueAt(history.present, action.place, action.value)), action.group),
      }
    case 'replace':
      return { ...state, history: change(history, next(action.value)) }
    case 'undo':
      return { ...state, history: undo(history) }
    case 'redo':
      return { ...state, history: redo(history) }
    case 'pause':
      return { ...state, history: pause(history) }
    case 'discard':
      return { ...state, history: change(history, state.saved), foundFrom: null }
    case 'saved':
      return {
        ...state,
        history: change(history, action.value),
        base: action.base,
        saved: action.saved,
        foundFrom: null,
      }
  }
}

function start<T>(of: { kind: DocumentKind; id: string; revision: number; body: T }): State<T> {
  const found = findDraft<T>(localStorage, of.kind, of.id, thisTab())
  const fresh = { history: begin(of.body), base: of.revision, saved: of.body, foundFrom: null, found }
  if (!found || same(found.kept.value, of.body)) return fresh
  const { kept } = found
  return { ...fresh, history: change(fresh.history, kept.value), base: kept.base, foundFrom: kept.at }
}

export interface Draft<T> {
  value: T
  /** The revision that the edit began from. */
  base: number
  saved: T
  dirty: boolean
  foundFrom: string | null
  canUndo: boolean
  canRedo: boolean
  set(place: Place, value: unknown, group?: string | null): void
  replace(value: T): void
  undo(): void
  redo(): void
  pause(): void
  discard(): void
  /** After saving, or after taking what somebody else saved. */
  rebase(base: number, saved: T, value?: T): void
}

const alone = <T>(_: T, after: T): T => after

/** An edit under way: undone and redone step by step, and kept in this browser until it is saved. */
export function useDraft<T>(of: {
  kind: DocumentKind
  id: string
  revision: number
  body: T
  follow?: Follow<T> | undefined
}): Draft<T> {
  const { follow = alone } = of
  const [state, dispatch] = useReducer((now: State<T>, action: Step<T>) => step(now, action, follow), of, start<T>)
  const { history, base, saved } = state
  const value = history.present
  const dirty = useMemo(() => !same(value, saved), [value, saved])
  const { kind, id } = of
  const { found: from } = state
  useEffect(() => {
    const kept = dirty ? { base, value, at: new Date().toISOString() } : null
    keepDraft(localStorage, { kind, id, tab: thisTab(), from }, kept)
  }, [kind, id, from, base, value, dirty])
  const set = useCallback(
    (place: Place, next: unknown, group: string | null = null) => dispatch({ kind: 'set', place, value: next, group }),
    [],
  )
  const simple = useMemo(
    () => ({
      replace: (next: T) => dispatch({ kind: 'replace', value: next }),
      undo: () => dispatch({ kind: 'undo' }),
      redo: () => dispatch({ kind: 'redo' }),
      pause: () => dispatch({ kind: 'pause' }),
      discard: () => dispatch({ kind: 'discard' }),
      rebase: (to: number, body: T, next?: T) =>
        dispatch({ kind: 'saved', base: to, saved: body, value: next ?? body }),
    }),
    [],
  )
  return {
    value,
    base,
    saved,
    dirty,
    foundFrom: state.foundFrom,
    canUndo: history.past.length > 0,
    canRedo: history.future.length > 0,
    set,
    ...simple,
  }
}
