import { useLayoutEffect, useRef, useState } from 'react'

/** The width that a picture has for itself, so that its text keeps its size on a phone. */
export function useWidth<T extends HTMLElement>(initial = 640) {
  const ref = useRef<T>(null)
  const [width, setWidth] = useState(initial)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const measure = () => {
      const found = Math.floor(element.clientWidth)
      if (found > 0) setWidth(found)
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, width }
}
