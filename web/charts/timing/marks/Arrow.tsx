import { pixel } from '../../scale.ts'

/** An arrow from a point along a direction (px); one too short to be seen is left out. */
export function Arrow(props: { x: number; y: number; dx: number; dy: number; className?: string }) {
  const { x, y, dx, dy } = props
  const length = Math.hypot(dx, dy)
  if (!(length >= 1)) return null
  const head = Math.min(9, length * 0.6)
  const [ux, uy] = [dx / length, dy / length]
  const [bx, by] = [x + dx - ux * head, y + dy - uy * head]
  const side = head * 0.45
  return (
    <g className={`arrow ${props.className ?? ''}`} aria-hidden="true">
      <path d={`M${pixel(x)} ${pixel(y)}L${pixel(bx)} ${pixel(by)}`} />
      <path
        className="head"
        d={`M${pixel(x + dx)} ${pixel(y + dy)}L${pixel(bx - uy * side)} ${pixel(by + ux * side)}L${pixel(bx + uy * side)} ${pixel(by - ux * side)}z`}
      />
    </g>
  )
}
