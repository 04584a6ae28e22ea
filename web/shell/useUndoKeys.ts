import { useEffect, useRef } from 'react'
import { pressed } from './shortcuts.ts'

/** Undoes and redoes by keys, in fields too: what was typed there is in the same history. */
export function useUndoKeys(of: { undo(): void; redo(): void; on: boolean }): void {
  const { on } = of
  const actions = useRef(of)
  useEffect(() => {
    actions.current = of
  })
  useEffect(() => {
    if (!on) return
    const press = (event: KeyboardEvent) => {
      const which = pressed(event, 'undo', 'redo')
      if (which === null) return
      event.preventDefault()
      actions.current[which]()
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [on])
}
