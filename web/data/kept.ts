import { useSyncExternalStore } from 'react'

/** A choice that this browser keeps, and that every tab of it follows. */
export interface Kept<T extends string> {
  now(): T
  choose(next: T): void
  /** The choice, in a component that is drawn anew when it changes. */
  use(): T
  subscribe(listener: () => void): () => void
}

/** `choices`: what may be kept, the first where nothing is kept yet or storage is forbidden. */
export function keptChoice<T extends string>(key: string, choices: readonly [T, ...T[]]): Kept<T> {
  let value: T | null = null
  const listeners = new Set<() => void>()

  const read = (): T => {
    try {
      return choices.find((choice) => choice === localStorage.getItem(key)) ?? choices[0]
    } catch {
      return choices[0]
    }
  }
  const now = (): T => {
    value ??= read()
    return value
  }
  const tell = () => {
    for (const listener of listeners) listener()
  }
  const follow = (event: StorageEvent) => {
    // A null key: the whole storage was cleared.
    if (event.key !== key && event.key !== null) return
    value = null
    tell()
  }
  const subscribe = (listener: () => void) => {
    if (listeners.size === 0) addEventListener('storage', follow)
    listeners.add(listener)
    return () => {
      listeners.delete(listener)
      if (listeners.size === 0) removeEventListener('storage', follow)
    }
  }
  return {
    now,
    subscribe,
    use: () => useSyncExternalStore(subscribe, now, () => choices[0]),
    choose: (next) => {
      value = next
      try {
        localStorage.setItem(key, next)
      } catch {
        // A forbidden storage costs the memory of the choice, not the choice.
      }
      tell()
    },
  }
}
