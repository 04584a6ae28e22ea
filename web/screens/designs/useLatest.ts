import { useEffect, useLayoutEffect, useRef } from 'react'

export interface Still {
  /** Whether the screen is still there. */
  shown(): boolean
  /** Whether nothing newer waits. */
  newest(): boolean
}

/**
 * Works on the newest thing asked for, one at a time: what is asked meanwhile replaces what has not begun, so that
 * dragging never builds a queue.
 */
export function useLatest<T>(wanted: T | null, work: (asked: T, still: Still) => Promise<void>): void {
  const next = useRef<T | null>(null)
  const running = useRef(false)
  const shown = useRef(true)
  const worker = useRef(work)
  useLayoutEffect(() => {
    worker.current = work
  })
  useEffect(() => {
    shown.current = true
    return () => {
      shown.current = false
    }
  }, [])
  // Before the paint, so that the question is on its way while the browser draws the typed figure.
  useLayoutEffect(() => {
    next.current = wanted
    if (wanted === null || running.current) return
    running.current = true
    void (async () => {
      while (next.current !== null && shown.current) {
        const asked = next.current
        next.current = null
        await worker.current(asked, { shown: () => shown.current, newest: () => next.current === null })
      }
      running.current = false
    })()
  }, [wanted])
}
