import { useId } from 'react'
import { words } from '../words/catalogue.ts'
import { seconds } from '../words/format.ts'
import { type Side, SidePattern, sideColour } from './RobotSign.tsx'
import { linearScale, pixel, ticks } from './scale.ts'

export interface WaitingPlace {
  id: string
  name: string
  robots: { sign: string; side: Side; seconds: number; error: number }[]
}

const head = 24
const bar = 18

/** Seconds that each robot waits, place by place, on one axis; a whisker is one standard error to both sides. */
export function WaitingBars(props: { places: WaitingPlace[]; width: number }) {
  const { places, width } = props
  const id = useId()
  const most = Math.max(0.1, ...places.flatMap(({ robots }) => robots.map((robot) => robot.seconds + robot.error)))
  const x = linearScale([0, most], [34, width - 58])
  const heights = places.map(({ robots }) => head + robots.length * bar + 8)
  const tops = heights.map((_, index) => heights.slice(0, index).reduce((sum, height) => sum + height, 0))
  const bottom = heights.reduce((sum, height) => sum + height, 0)
  const told = places
    .map(({ name, robots }) => `${name}: ${robots.map((one) => `${one.sign} ${seconds(one.seconds)}`).join(', ')}`)
    .join('; ')
  return (
    <svg
      width={width}
      height={bottom + 22}
      viewBox={`0 0 ${width} ${bottom + 22}`}
      role="img"
      aria-label={words().match.waiting.told(told)}
    >
      <defs>
        <SidePattern id={id} />
      </defs>
      {places.map((place, index) => (
        <g key={place.id}>
          <text x={4} y={tops[index]! + 16} fontSize="14" fontWeight="600">
            {place.name}
          </text>
          {place.robots.map((robot, row) => {
            const y = tops[index]! + head + row * bar
            const length = pixel(Math.max(1, x(robot.seconds) - 34))
            return (
              <g key={robot.sign}>
                <text x={4} y={y + 12} fontSize="12.5">
                  {robot.sign}
                </text>
                <rect
                  x={34}
                  y={y + 2}
                  width={length}
                  height={bar - 6}
                  style={{
                    fill: robot.side === 'ours' ? sideColour('ours') : 'var(--sheet)',
                    stroke: sideColour(robot.side),
                  }}
                />
                {robot.side === 'theirs' && (
                  <rect x={34} y={y + 2} width={length} height={bar - 6} fill={`url(#${id})`} />
                )}
                {robot.error > 0 && (
                  <line
                    x1={pixel(x(Math.max(0, robot.seconds - robot.error)))}
                    x2={pixel(x(robot.seconds + robot.error))}
                    y1={y + 8}
                    y2={y + 8}
                    style={{ stroke: 'var(--note)' }}
                    strokeWidth="2"
                  />
                )}
                <text x={pixel(x(robot.seconds + robot.error) + 6)} y={y + 12} fontSize="12.5">
                  {seconds(robot.seconds)}
                </text>
              </g>
            )
          })}
        </g>
      ))}
      {ticks([0, most], Math.max(2, Math.floor(width / 110))).map((tick) => (
        <text key={tick} x={pixel(x(tick))} y={bottom + 16} fontSize="12" textAnchor="middle" className="soft">
          {seconds(tick)}
        </text>
      ))}
    </svg>
  )
}
