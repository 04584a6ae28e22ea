import { type RefObject, useEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { whenIdle } from '../../charts/turns.ts'

/** How long a page is left to whoever reads its beginning (ms). */
const patience = 5000

/**
 * Whether an element's content is wanted, looked for from `when` on: what takes long waits until it has been in the window once,
 * or the page has had nothing else to do for a while, so that paper has it without anybody having scrolled there. Printing
 * wants it at once.
 */
export function useSeen<T extends Element>(when: boolean): [ref: RefObject<T | null>, seen: boolean] {
  const ref = useRef<T>(null)
  const [seen, setSeen] = useState(!('IntersectionObserver' in globalThis))
  useEffect(() => {
    const element = ref.current
    if (seen || !when || !element) return
    let left = false
    const begin = () => !left && setSeen(true)
    const print = () => flushSync(() => setSeen(true))
    const watching = new IntersectionObserver((entries) => {
      if (entries.some(({ isIntersecting }) => isIntersecting)) begin()
    })
    watching.observe(element)
    const timer = setTimeout(() => void whenIdle().then(begin), patience)
    addEventListener('beforeprint', print)
    return () => {
      left = true
      watching.disconnect()
      clearTimeout(timer)
      removeEventListener('beforeprint', print)
    }
  }, [seen, when])
  return [ref, seen]
}
