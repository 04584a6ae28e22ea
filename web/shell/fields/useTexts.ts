import { useCallback, useMemo, useState } from 'react'
import type { Place } from '../../data/difference.ts'
import { placeKey } from './EditContext.tsx'

interface Typed {
  text: string
  error: string | null
}

/** What has been typed and is not a value (yet), by place. */
export function useTexts() {
  const [typed, setTyped] = useState<{ readonly [place: string]: Typed }>({})
  const setText = useCallback((place: Place, text: string | null, error: string | null) => {
    const key = placeKey(place)
    setTyped((before) => {
      if (text !== null) return { ...before, [key]: { text, error } }
      const { [key]: _, ...others } = before
      return others
    })
  }, [])
  const clear = useCallback(() => setTyped({}), [])
  const texts = useMemo(() => Object.fromEntries(Object.entries(typed).map(([key, { text }]) => [key, text])), [typed])
  const unread = useMemo(() => Object.values(typed).flatMap(({ error }) => (error === null ? [] : [error])), [typed])
  return { texts, setText, clear, unread }
}
