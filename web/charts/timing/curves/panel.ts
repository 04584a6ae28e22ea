import type { Scale } from '../../scale.ts'
import { ticks } from '../../scale.ts'

/** A line of a small picture: values at the common places along x. */
export interface Line {
  id: string
  name: string
  values: readonly number[]
}

/** Something that a line should be read against. */
export interface Limit {
  id: string
  value: number
  text: string
}

/** One small picture among several on the same scale along x. SI inside; `shown` is what the reader's unit makes of it. */
export interface CurvePanel {
  id: string
  name: string
  /** As it stands behind the axis' numbers. */
  unit: string
  /** How much SI one unit is. */
  factor: number
  lines: Line[]
  limits: Limit[]
  /** Values that the axis holds in any case, so that small changes do not look large. */
  holds?: number[]
  /** Say a value with its unit. */
  say(value: number): string
}

type Drawn = Pick<CurvePanel, 'lines' | 'limits' | 'holds'>

/** Limits far off what the lines do would flatten them: they are drawn up to so many times the lines' own range. */
const reach = 1.5

export const shownLimits = ({ lines, limits, holds = [] }: Drawn): Limit[] => {
  const [low, high] = ends([...lines.flatMap(({ values }) => values), ...holds])
  const room = reach * Math.max(high - low, Math.abs(high) * 0.2, Math.abs(low) * 0.2)
  return limits.filter(({ value }) => value >= low - room && value <= high + room)
}

const ends = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)]

/** What lies too far off to be drawn: it is said instead. */
export const farLimits = (panel: Drawn): Limit[] => {
  const near = shownLimits(panel)
  return panel.limits.filter((limit) => !near.includes(limit))
}

/**
 * From where to where a panel's axis runs (SI): all lines and the limits that are shown, with 0 where it lies near, and a
 * little room above. Never of no height.
 */
export function panelDomain(panel: Drawn): [number, number] {
  const values = [
    ...panel.lines.flatMap(({ values }) => values),
    ...shownLimits(panel).map(({ value }) => value),
    ...(panel.holds ?? []),
  ]
  const [low, high] = ends(values)
  const least = low > 0 && low < 0.6 * high ? 0 : low
  const most = high < 0 && high > 0.6 * least ? 0 : high
  const height = most - least
  if (!(height > Math.abs(most) * 1e-6)) {
    const room = Math.abs(most) * 0.1 || 1
    return [least - room, most + room]
  }
  // A limit on top has its text above it, where no curve goes.
  const bounded = shownLimits(panel).some(({ value }) => value === most)
  return [least < 0 ? least - 0.05 * height : least, most + (bounded ? 0.22 : 0.08) * height]
}

/** Marks of the axis: round numbers in the reader's unit, as SI. */
export const panelTicks = ([low, high]: readonly [number, number], factor: number, count: number): number[] =>
  ticks([low / factor, high / factor], count).map((each) => each * factor)

/** Which of the places along x is nearest to a position in the picture. */
export function nearest(places: readonly number[], scale: Scale, position: number): number {
  const value = scale.invert(position)
  return places.reduce(
    (best, each, index) => (Math.abs(each - value) < Math.abs(places[best]! - value) ? index : best),
    0,
  )
}

/** Where texts stand that would overlap: each at least so far below the one before (px). */
export function apart(wished: readonly number[], distance: number): number[] {
  const order = wished.map((at, index) => ({ at, index })).toSorted((a, b) => a.at - b.at)
  const placed: number[] = []
  let last = Number.NEGATIVE_INFINITY
  for (const { at, index } of order) {
    last = Math.max(at, last + distance)
    placed[index] = last
  }
  return placed
}

/** A curve's value between its places, which may rise or fall along x. */
export function between(x: readonly number[], values: readonly number[], at: number): number {
  const falls = x.at(-1)! < x[0]!
  const next = x.findIndex((each) => (falls ? each <= at : each >= at))
  if (next <= 0) return values[next === 0 ? 0 : values.length - 1]!
  const [a, b] = [x[next - 1]!, x[next]!]
  return values[next - 1]! + ((values[next]! - values[next - 1]!) * (at - a)) / (b - a)
}
