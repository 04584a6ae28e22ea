import { useCallback, useRef, useState } from 'react'

const prefix = 'cyclewright/typed/'

/** Where the browser keeps nothing, it stays as long as the page does. */
const here = new Map<string, string>()

function stored(name: string): string | null {
  try {
    return sessionStorage.getItem(name) ?? here.get(name) ?? null
  } catch {
    return here.get(name) ?? null
  }
}

function store(name: string, text: string | null): void {
  if (text === null) here.delete(name)
  else here.set(name, text)
  try {
    if (text === null) sessionStorage.removeItem(name)
    else sessionStorage.setItem(name, text)
  } catch {
    // It is kept above.
  }
}

function readAs<T>(name: string): T | null {
  try {
    return JSON.parse(stored(name) ?? 'null') as T | null
  } catch {
    return null
  }
}

export interface Typed<T> {
  typed: T
  type(next: T): void
  /** Forgets what was typed: it is saved, or not wanted. */
  forget(): void
  /** Whether the form began with something that had been typed before. */
  kept: boolean
}

/**
 * What is typed into a form and not saved, kept for this tab: closing a panel, going to another screen or loading the page anew
 * loses nothing. `key` names what it is about and the state that it began from, so that nothing is put over a newer one.
 */
export function useTyped<T>(key: string, fresh: T): Typed<T> {
  const name = prefix + key
  const begun = useRef<{ name: string; typed: T | null }>(undefined)
  if (begun.current?.name !== name) begun.current = { name, typed: readAs<T>(name) }
  const [state, setState] = useState<{ name: string; typed: T } | null>(null)
  const now = state?.name === name ? state.typed : (begun.current.typed ?? fresh)
  const type = useCallback(
    (next: T) => {
      store(name, JSON.stringify(next))
      setState({ name, typed: next })
    },
    [name],
  )
  const forget = useCallback(() => {
    store(name, null)
    begun.current = { name, typed: null }
    setState(null)
  }, [name])
  const { typed: before } = begun.current
  const kept = before !== null && JSON.stringify(before) !== JSON.stringify(fresh)
  return { typed: now, type, forget, kept }
}
