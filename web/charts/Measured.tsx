import type { ReactNode } from 'react'
import { useDrawn } from './useDrawn.ts'
import { useWidth } from './useWidth.ts'

/** Gives a picture the width that there is, and measures under its name how long drawing takes from its data on. */
export function Measured(props: { children(width: number): ReactNode; most?: number; drawn: string; data: unknown }) {
  const { ref, width } = useWidth<HTMLDivElement>()
  useDrawn(props.drawn, props.data)
  return (
    <div ref={ref} style={{ minWidth: 0, overflow: 'hidden', maxWidth: props.most }}>
      {props.children(width)}
    </div>
  )
}
