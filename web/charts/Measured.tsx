import type { ReactNode } from 'react'
import { useDrawn } from './useDrawn.ts'
import { useWidth } from './useWidth.ts'

/**
 * Gives a picture the width that there is, and measures under its name how long drawing takes from its data on. It is
 * drawn once its width is known, within the same frame: one drawn at a guess would cost as much again.
 */
export function Measured(props: { children(width: number): ReactNode; most?: number; drawn: string; data: unknown }) {
  const { ref, width, known } = useWidth<HTMLDivElement>()
  useDrawn(props.drawn, props.data, known)
  return (
    <div ref={ref} style={{ minWidth: 0, overflow: 'hidden', maxWidth: props.most }}>
      {known && props.children(width)}
    </div>
  )
}
