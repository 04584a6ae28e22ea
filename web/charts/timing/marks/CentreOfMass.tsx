import { pixel } from '../../scale.ts'

/** The quartered circle of a centre of mass. */
export function CentreOfMass(props: { x: number; y: number }) {
  const [x, y] = [pixel(props.x), pixel(props.y)]
  return (
    <g aria-hidden="true">
      <circle cx={x} cy={y} r={6.5} className="solid" />
      <path d={`M${x} ${y}v-6.5a6.5 6.5 0 0 1 6.5 6.5zM${x} ${y}v6.5a6.5 6.5 0 0 1 -6.5 -6.5z`} className="filled" />
    </g>
  )
}
