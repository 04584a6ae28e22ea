import { unitOf } from '../../../units/quantities.ts'
import { unitsShown } from '../../../units/system.ts'
import { pixel } from '../../scale.ts'
import { roundBelow } from '../geometry/fit.ts'
import { lengthMeasure, sayLength } from '../say.ts'

const most = 76

/** How long a round length of the reader's units is in this picture. */
export function ScaleBar(props: { perMetre: number; x: number; y: number }) {
  const { perMetre, x, y } = props
  const metres = most / perMetre
  const { factor } = unitOf(lengthMeasure(metres), unitsShown())
  const length = roundBelow(metres / factor) * factor
  const end = pixel(x + length * perMetre)
  return (
    <g aria-hidden="true">
      <path d={`M${x} ${y - 4}v8M${x} ${y}H${end}M${end} ${y - 4}v8`} className="edge" />
      <text x={end + 6} y={y + 4} className="halo measure soft">
        {sayLength(length)}
      </text>
    </g>
  )
}
