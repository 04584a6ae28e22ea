import { useLayoutEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'

/** A width that is no place for a picture (px). */
const least = 40

/** What is taken for the width until it is known (px). */
const guess = 640

/** What A4 and Letter have between the margins of theme/print.css, to the narrower of both (px). */
const paper = 640

/**
 * The width that a picture has for itself, so that its text keeps its size on a phone; `known` as soon as it was measured.
 * `onPaper`: the width of a printed page (px).
 */
export function useWidth<T extends HTMLElement>(onPaper = paper) {
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
    // Drawn for the window and made smaller, its letters would be too small to read on paper. Its share of the width stays.
    const forPaper = () => {
      const all = element.closest('main')?.clientWidth ?? element.clientWidth
      const there = Math.floor((onPaper * element.clientWidth) / Math.max(1, all))
      if (there >= least) flushSync(() => setWidth(there))
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    addEventListener('beforeprint', forPaper)
    addEventListener('afterprint', measure)
    return () => {
      observer.disconnect()
      removeEventListener('beforeprint', forPaper)
      removeEventListener('afterprint', measure)
    }
  }, [onPaper])
  return { ref, width: found ?? guess, known: found !== null }
}
