import type { ReactNode } from 'react'
import { useWidth } from './useWidth.ts'

/** Gives a picture the width that there is. */
export function Measured(props: { children(width: number): ReactNode; most?: number }) {
  const { ref, width } = useWidth<HTMLDivElement>()
  return (
    <div ref={ref} style={{ minWidth: 0, overflow: 'hidden', maxWidth: props.most }}>
      {props.children(width)}
    </div>
  )
}
