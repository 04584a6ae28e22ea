import { useLayoutEffect, useRef, useState } from 'react'

/** A width that is no place for a picture (px). */
const least = 40

/** The width that a picture has for itself, so that its text keeps its size on a phone. */
export function useWidth<T extends HTMLElement>(initial = 640) {
  const ref = useRef<T>(null)
  const [width, setWidth] = useState(initial)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const measure = () => {
      const found = Math.floor(element.clientWidth)
      // While a page is laid out for paper it may be a few pixels wide for a moment, which no picture can be drawn in.
      if (found >= least) setWidth(found)
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, width }
}
