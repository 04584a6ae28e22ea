import { type ReactNode, useEffect, useState } from 'react'
import { inTurn } from './turns.ts'
import { Since } from './useDrawn.ts'

/**
 * Parts of a screen that need not be there in the frame of its first picture: each is drawn in a turn of its own after
 * it, in their order. Pictures within count their time from when they could have been drawn (`Since`).
 */
export function Later(props: { children: ReactNode }) {
  const [since] = useState(() => ({ at: performance.now() as number | null }))
  const [there, setThere] = useState(false)
  useEffect(() => inTurn(() => setThere(true)), [])
  // What arrives after the first drawing is measured like anything else.
  useEffect(() => {
    if (there) since.at = null
  }, [there, since])
  return there ? <Since value={since}>{props.children}</Since> : null
}
