import { Children, type ReactNode, useEffect, useState } from 'react'

/**
 * Draws its parts one a frame, from the top: a screen of many pictures answers while it is drawn, and each picture is
 * there as soon as its own turn comes. Parts that are there already are drawn with every change.
 */
export function Stagger(props: { children: ReactNode }) {
  const parts = Children.toArray(props.children)
  const [shown, setShown] = useState(1)
  useEffect(() => {
    if (shown >= parts.length) return
    const frame = requestAnimationFrame(() => setShown(shown + 1))
    return () => cancelAnimationFrame(frame)
  }, [shown, parts.length])
  return parts.slice(0, shown)
}
