import type { PitHistogram } from '../../src/model/scouting/record/index.ts'
import { words } from '../words/catalogue.ts'
import { linearScale, pixel, ticks } from './scale.ts'

const left = 34
const right = 8
const top = 10
const bottom = 26
const height = 190

/** Scores by where they lay in their forecasts; between the dashed lines chance alone explains what differs. */
export function PitBars({ pit, width }: { pit: PitHistogram; width: number }) {
  const { counts, low, high } = pit
  const texts = words().forecasts
  const most = Math.max(1, high, ...counts)
  const x = linearScale([0, counts.length], [left, width - right])
  const y = linearScale([0, most], [height - bottom, top])
  const told = counts.join(', ')
  const line = (value: number, name: string) => (
    <line
      key={name}
      x1={left}
      x2={width - right}
      y1={pixel(y(value))}
      y2={pixel(y(value))}
      className="calibration-diagonal"
    />
  )
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={counts.length === 10 ? texts.pitToldTenths(told) : texts.pitTold(told)}
    >
      {ticks([0, most], 3)
        .filter(Number.isInteger)
        .map((tick) => (
          <text key={tick} x={left - 6} y={pixel(y(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
            {tick}
          </text>
        ))}
      {counts.map((count, k) => {
        const place = x(k)
        return (
          <rect
            key={place}
            x={pixel(place + 1)}
            y={pixel(y(count))}
            width={pixel(x(1) - x(0) - 2)}
            height={pixel(y(0) - y(count))}
            className="pit-bar"
          />
        )
      })}
      {line(low, 'low')}
      {line(high, 'high')}
      <text x={left} y={height - 8} fontSize="12" className="soft">
        {texts.lower}
      </text>
      <text x={width - right} y={height - 8} fontSize="12" textAnchor="end" className="soft">
        {texts.higher}
      </text>
    </svg>
  )
}
