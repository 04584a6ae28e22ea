/** What can be undone and redone. Edits of one group (typing in one field) are one step. */
export interface History<T> {
  past: T[]
  present: T
  future: T[]
  group: string | null
}

const most = 200

export const begin = <T>(present: T): History<T> => ({ past: [], present, future: [], group: null })

export function change<T>(history: History<T>, next: T, group: string | null = null): History<T> {
  if (next === history.present) return history
  const joins = group !== null && group === history.group && history.past.length > 0
  const past = joins ? history.past : [...history.past, history.present].slice(-most)
  return { past, present: next, future: [], group }
}

export function undo<T>(history: History<T>): History<T> {
  const previous = history.past.at(-1)
  if (previous === undefined) return history
  return {
    past: history.past.slice(0, -1),
    present: previous,
    future: [history.present, ...history.future],
    group: null,
  }
}

export function redo<T>(history: History<T>): History<T> {
  const [next, ...rest] = history.future
  if (next === undefined) return history
  return { past: [...history.past, history.present], present: next, future: rest, group: null }
}

/** Ends the group, so that the next edit of the same field is a step of its own. */
export const pause = <T>(history: History<T>): History<T> =>
  history.group === null ? history : { ...history, group: null }
