import { useLayoutEffect, useRef, useState } from 'react'

/** A width that is no place for a picture (px). */
const least = 40

/** What is taken for the width until it is known (px). */
const guess = 640

/** The width that a picture has for itself, so that its text keeps its size on a phone; `known` as soon as it was measured. */
export function useWidth<T extends HTMLElement>() {
  const ref = useRef<T>(null)
  const [found, setWidth] = useState<number | null>(null)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const measure = () => {
      const there = Math.floor(element.clientWidth)
      // While a page is laid out for paper it may be a few pixels wide for a moment, which no picture can be drawn in.
      if (there >= least) setWidth(there)
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, width: found ?? guess, known: found !== null }
}
