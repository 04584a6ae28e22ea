import { type RefObject, useEffect, useRef, useState } from 'react'

/** Whether an element has been in the window once, looked for from `when` on: what takes long waits for it. */
export function useSeen<T extends Element>(when: boolean): [ref: RefObject<T | null>, seen: boolean] {
  const ref = useRef<T>(null)
  const [seen, setSeen] = useState(!('IntersectionObserver' in globalThis))
  useEffect(() => {
    const element = ref.current
    if (seen || !when || !element) return
    const watching = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true)
    })
    watching.observe(element)
    return () => watching.disconnect()
  }, [seen, when])
  return [ref, seen]
}
