import { Children, isValidElement, type ReactNode, useEffect, useState } from 'react'

/**
 * Draws its parts one a frame, from the top: a screen of many pictures answers while it is drawn, and each picture is
 * there as soon as its own turn comes. A part that is there already stays with every change, also where another one
 * appears above it: what is typed in it would go with it.
 */
export function Stagger(props: { children: ReactNode }) {
  // Each has a key by its place among the children, with those that are not there counted.
  const parts = Children.toArray(props.children).filter(isValidElement)
  const [shown, setShown] = useState<ReadonlySet<unknown>>(() => new Set([parts[0]?.key]))
  const next = parts.find(({ key }) => !shown.has(key))?.key
  useEffect(() => {
    if (next === undefined) return
    const frame = requestAnimationFrame(() => setShown(new Set([...shown, next])))
    return () => cancelAnimationFrame(frame)
  }, [shown, next])
  return parts.filter(({ key }) => shown.has(key))
}
