import { useEffect, useRef } from 'react'

/** Ctrl+Z undoes, Ctrl+Shift+Z or Ctrl+Y redoes, in fields too: what was typed there is in the same history. */
export function useUndoKeys(of: { undo(): void; redo(): void; on: boolean }): void {
  const { on } = of
  const actions = useRef(of)
  useEffect(() => {
    actions.current = of
  })
  useEffect(() => {
    if (!on) return
    const press = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const key = event.key.toLowerCase()
      const back = key === 'z' && !event.shiftKey
      const forth = (key === 'z' && event.shiftKey) || key === 'y'
      if (!back && !forth) return
      event.preventDefault()
      if (back) actions.current.undo()
      else actions.current.redo()
    }
    addEventListener('keydown', press)
    return () => removeEventListener('keydown', press)
  }, [on])
}
