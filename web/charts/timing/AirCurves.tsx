import { pressure as measure } from '../../units/measures.ts'
import { sayQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import { Figure } from '../Figure.tsx'
import { linearScale, pixel, ticks } from '../scale.ts'
import { TimeScale } from '../TimeScale.tsx'
import { useWidth } from '../useWidth.ts'

const [left, height, bottom] = [62, 220, 34]

/** Pressure of stored air through a match with its cautious bound, and where the working pressure is lost; Pa and s. */
export function AirCurves(props: {
  timeLeft: number[]
  pressure: number[]
  pressureAdiabatic: number[]
  working: number
  lostAt: number | null
}) {
  const { timeLeft, pressure, pressureAdiabatic, working, lostAt } = props
  const { ref, width } = useWidth<HTMLDivElement>()
  const texts = words().air.answer
  const most = Math.max(working, ...pressure) * 1.05
  const longest = Math.max(1, ...timeLeft)
  const x = linearScale([longest, 0], [left, width - 12])
  const y = linearScale([0, most], [height - bottom, 8])
  const say = (value: number) => sayQuantity(value, measure, undefined, 0)
  const line = (values: number[]) => `M${values.map((v, i) => `${pixel(x(timeLeft[i]!))} ${pixel(y(v))}`).join('L')}`
  return (
    <Figure
      title={texts.figure}
      table={{
        head: texts.head,
        rows: timeLeft
          .map((time, i) => [seconds(time), say(pressure[i]!), say(pressureAdiabatic[i]!)])
          .filter((_, i) => i % 5 === 0),
      }}
    >
      <div ref={ref}>
        <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={texts.figure}>
          {ticks([0, most], 4).map((tick) => (
            <g key={tick}>
              <line x1={left} x2={width - 12} y1={y(tick)} y2={y(tick)} style={{ stroke: 'var(--rule)' }} />
              <text x={left - 6} y={y(tick) + 4} fontSize="12" textAnchor="end" className="soft">
                {say(tick).split('\u00a0')[0]}
              </text>
            </g>
          ))}
          <line x1={left} x2={width - 12} y1={y(working)} y2={y(working)} style={{ stroke: 'var(--note)' }} />
          {lostAt !== null && (
            <line
              x1={x(lostAt)}
              x2={x(lostAt)}
              y1={8}
              y2={height - bottom}
              style={{ stroke: 'var(--note)' }}
              strokeDasharray="5 3"
            />
          )}
          <path
            d={line(pressureAdiabatic)}
            fill="none"
            style={{ stroke: 'var(--series-2)' }}
            strokeDasharray="7 4"
            strokeWidth="2"
          />
          <path d={line(pressure)} fill="none" style={{ stroke: 'var(--series-1)' }} strokeWidth="2.25" />
          <TimeScale
            scale={x}
            domain={[longest, 0]}
            y={height - bottom + 8}
            width={width}
            unit={words().charts.timeLeft}
          />
        </svg>
      </div>
    </Figure>
  )
}
