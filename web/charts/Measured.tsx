import type { ReactNode } from 'react'
import { useDrawn } from './useDrawn.ts'
import { useWidth } from './useWidth.ts'

/** Gives a picture the width that there is. With a name and its data, how long drawing takes is measured. */
export function Measured(props: { children(width: number): ReactNode; most?: number; drawn?: string; data?: unknown }) {
  const { ref, width } = useWidth<HTMLDivElement>()
  useDrawn(props.drawn ?? '', props.drawn === undefined ? null : props.data)
  return (
    <div ref={ref} style={{ minWidth: 0, overflow: 'hidden', maxWidth: props.most }}>
      {props.children(width)}
    </div>
  )
}
