import type { CurvePoint } from '../../src/model/scouting/record/index.ts'
import { words } from '../words/catalogue.ts'
import { percent } from '../words/format.ts'
import { linearScale, pixel, ticks } from './scale.ts'

const left = 46
const right = 24
const top = 10
const bottom = 42

/** How often the likelier side won against its chance, from one half to one, in the band where it lies if chances hold. */
export function CalibrationCurve({ points, width }: { points: readonly CurvePoint[]; width: number }) {
  const texts = words().forecasts
  const height = Math.min(360, Math.max(240, width * 0.7))
  const x = linearScale([0.5, 1], [left, width - right])
  const y = linearScale([0, 1], [height - bottom, top])
  const at = (chance: number, share: number) => `${pixel(x(chance))} ${pixel(y(share))}`
  const line = (of: (point: CurvePoint) => number) => points.map((point) => at(point.forecast, of(point)))
  const band = [...line(({ high }) => high), ...line(({ low }) => low).reverse()]
  const told = points.map(({ forecast, came, low, high }) =>
    texts.pointTold(percent(forecast), percent(came), percent(low), percent(high)),
  )
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={texts.calibrationTold(told.join('; '))}
    >
      {ticks([0, 1], 4).map((tick) => (
        <g key={tick}>
          <line
            x1={left}
            x2={width - right}
            y1={pixel(y(tick))}
            y2={pixel(y(tick))}
            style={{ stroke: 'var(--rule)' }}
          />
          <text x={left - 6} y={pixel(y(tick) + 4)} fontSize="12" textAnchor="end" className="soft">
            {percent(tick)}
          </text>
        </g>
      ))}
      {[0.5, 0.6, 0.7, 0.8, 0.9, 1].map((tick) => (
        <text key={tick} x={pixel(x(tick))} y={height - bottom + 17} fontSize="12" textAnchor="middle" className="soft">
          {percent(tick)}
        </text>
      ))}
      <text x={width - right} y={height - 6} fontSize="13" textAnchor="end">
        {texts.chance}
      </text>
      <path d={`M${band.join('L')}Z`} className="calibration-band" />
      <path d={`M${at(0.5, 0.5)}L${at(1, 1)}`} className="calibration-diagonal" />
      <path d={`M${line(({ came }) => came).join('L')}`} className="calibration-line" />
      {points.map(({ forecast, came, matches }) => (
        <circle
          key={forecast}
          cx={pixel(x(forecast))}
          cy={pixel(y(came))}
          r={pixel(2 + Math.sqrt(matches))}
          className="calibration-point"
        />
      ))}
    </svg>
  )
}
