import { pixel } from '../../scale.ts'

/** A wheel, a roller or a gear, with spokes that show how far it has turned (rad, clockwise). */
export function Disc(props: { x: number; y: number; radius: number; turned?: number; spokes?: number }) {
  const { x, y, turned = 0, spokes = 3 } = props
  const radius = Math.max(2, props.radius)
  const rim = radius > 7 ? spokesOf({ x, y, radius, turned, spokes }) : ''
  return (
    <g aria-hidden="true">
      <circle cx={pixel(x)} cy={pixel(y)} r={pixel(radius)} className="solid" />
      {rim && <path d={rim} className="thin" />}
      {radius > 7 && <circle cx={pixel(x)} cy={pixel(y)} r={2.5} className="filled" />}
    </g>
  )
}

function spokesOf(disc: { x: number; y: number; radius: number; turned: number; spokes: number }): string {
  const { x, y, radius, turned, spokes } = disc
  return Array.from({ length: spokes }, (_, i) => {
    const angle = turned + (i * 2 * Math.PI) / spokes
    const reach = radius - 1
    return `M${pixel(x)} ${pixel(y)}l${pixel(reach * Math.cos(angle))} ${pixel(reach * Math.sin(angle))}`
  }).join('')
}
