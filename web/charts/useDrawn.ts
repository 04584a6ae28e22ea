import { createContext, useContext, useLayoutEffect, useRef } from 'react'

/** Begins the names of the measures of pictures in the browser's performance timeline. */
export const drawnPrefix = 'drawn:'

/** Measures of one picture that the timeline holds at most. */
const kept = 500

/** When a part that is drawn in a later turn could have been drawn: what it shows was there by then. */
export const Since = createContext<{ at: number | null } | null>(null)

/**
 * Measures how long a picture takes from its data to the screen: from the first render that has this data, or could have
 * had it, to the end of the frame that paints it, as 'drawn:<name>' in the performance timeline. The same data is measured once.
 * `ready`: the picture is drawn by this render, its width being known.
 */
export function useDrawn(name: string, data: unknown, ready = true): void {
  const seen = useRef<unknown>(undefined)
  const start = useRef<number | null>(null)
  const since = useContext(Since)
  if (data !== undefined && data !== null && seen.current !== data) {
    start.current = since?.at ?? globalThis.performance.now()
    seen.current = data
  }
  useLayoutEffect(() => {
    const from = start.current
    if (!ready || from === null) return
    start.current = null
    requestAnimationFrame(() =>
      afterFrame(() => {
        const measure = `${drawnPrefix}${name}`
        // A picture that follows a finger is drawn sixty times a second for as long as somebody likes.
        if (performance.getEntriesByName(measure).length >= kept) performance.clearMeasures(measure)
        performance.measure(measure, { start: from, end: performance.now() })
      }),
    )
  })
}

/**
 * Called from within a frame: once it is laid out and painted. A message comes next after that, while a timer may come
 * after what the same frame has begun to draw for the next one.
 */
function afterFrame(go: () => void): void {
  const { port1, port2 } = new MessageChannel()
  port1.onmessage = () => {
    port1.close()
    go()
  }
  port2.postMessage(null)
}
