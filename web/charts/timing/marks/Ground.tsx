import { useId } from 'react'
import { Hatch } from '../../Hatch.tsx'
import { pixel } from '../../scale.ts'

/** The floor, or whatever does not move: a line that is hatched below. */
export function Ground(props: { from: number; to: number; y: number }) {
  const id = useId()
  const [from, to, y] = [pixel(props.from), pixel(props.to), pixel(props.y)]
  return (
    <g aria-hidden="true">
      <defs>
        <Hatch id={`${id}ground`} gap={6} />
      </defs>
      <rect x={from} y={y} width={Math.max(0, pixel(to - from))} height={7} fill={`url(#${id}ground)`} />
      <path d={`M${from} ${y}H${to}`} className="edge" />
    </g>
  )
}
