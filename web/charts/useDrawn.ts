import { useLayoutEffect, useRef } from 'react'

/** Begins the names of the measures of pictures in the browser's performance timeline. */
export const drawnPrefix = 'drawn:'

/** Measures of one picture that the timeline holds at most. */
const kept = 500

/**
 * Measures how long a picture takes from its data to the screen: from the first render that has this data to the frame
 * that paints it, as 'drawn:<name>' in the performance timeline. The same data is measured once.
 */
export function useDrawn(name: string, data: unknown): void {
  const seen = useRef<unknown>(undefined)
  const start = useRef<number | null>(null)
  if (data !== undefined && data !== null && seen.current !== data) {
    seen.current = data
    start.current = globalThis.performance.now()
  }
  useLayoutEffect(() => {
    const from = start.current
    start.current = null
    if (from === null) return
    requestAnimationFrame(() => {
      const measure = `${drawnPrefix}${name}`
      // A picture that follows a finger is drawn sixty times a second for as long as somebody likes.
      if (performance.getEntriesByName(measure).length >= kept) performance.clearMeasures(measure)
      performance.measure(measure, { start: from, end: performance.now() })
    })
  })
}
