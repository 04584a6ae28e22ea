import { useState } from 'react'

/** What is typed into a form, kept in the browser until the record is: a phone that is put away in between loses nothing. */
export function useTyped<T extends object>(key: string, fresh: T): [T, (next: T) => void] {
  const name = `cyclewright/typed/${key}`
  const [typed, setTyped] = useState<T>(() => {
    try {
      return { ...fresh, ...(JSON.parse(localStorage.getItem(name) ?? '{}') as Partial<T>) }
    } catch {
      return fresh
    }
  })
  const type = (next: T) => {
    setTyped(next)
    try {
      if (next === fresh) localStorage.removeItem(name)
      else localStorage.setItem(name, JSON.stringify(next))
    } catch {
      // It stays on the screen.
    }
  }
  return [typed, type]
}
