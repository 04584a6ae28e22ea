import type { Estimate } from '../../../../src/model/scouting/estimates/types.ts'
import './interval.css'

/** Where a quantity lies: the line with 95 %, the bar with 80 %, the dot its mean. All bars of a column have one scale. */
export function Interval(props: { of: Estimate; most: number; label: string }) {
  const { of, most, label } = props
  const x = (value: number) => Math.max(0, Math.min(100, (100 * value) / (most || 1)))
  const [low, high] = of.interval95
  const [from, to] = of.interval80
  return (
    <svg className="interval" viewBox="0 0 100 12" preserveAspectRatio="none" role="img" aria-label={label}>
      <line x1={x(low)} x2={x(high)} y1="6" y2="6" vectorEffect="non-scaling-stroke" />
      <rect x={x(from)} width={Math.max(0.8, x(to) - x(from))} y="3" height="6" />
      <line
        className="interval-mean"
        x1={x(of.mean)}
        x2={x(of.mean)}
        y1="0.5"
        y2="11.5"
        vectorEffect="non-scaling-stroke"
      />
    </svg>
  )
}
