import { type Filled, filled, type SweepPoint, type SweepResult } from '../../../../src/model/timing/index.ts'

/** One number of motors: its times, and its points as far as they are known. */
export interface SearchRow {
  motors: number
  points: SweepPoint[]
  match: Filled[]
}

/** Points planned so far, by number of motors and place in its row. */
export type PlannedRows = ReadonlyMap<number, ReadonlyMap<number, number | null>>

const nothing: ReadonlyMap<number, number | null> = new Map()

/** The sweep's points, row by row. */
export function rowsOf({ points }: SweepResult, planned: PlannedRows): SearchRow[] {
  const counts = [...new Set(points.map(({ motors }) => motors))]
  return counts.map((motors) => {
    const row = points.filter((point) => point.motors === motors)
    return { motors, points: row, match: filled(row.map(can), planned.get(motors) ?? nothing) }
  })
}

export const can = ({ seconds }: SweepPoint): boolean => seconds !== null

/** A place of the rows. */
export interface Chosen {
  motors: number
  place: number
}

/** The place closest to a gearing, in ratio. */
export function placeOf(rows: readonly SearchRow[], gearing: { reduction: number; motors: number }): Chosen | null {
  const row = rows.find(({ motors }) => motors === gearing.motors) ?? rows[0]
  if (!row) return null
  const off = ({ reduction }: SweepPoint) => Math.abs(Math.log(reduction / gearing.reduction))
  const place = row.points.reduce((best, point, at) => (off(point) < off(row.points[best]!) ? at : best), 0)
  return { motors: row.motors, place }
}

/** What points are shown to: less does not tell two reductions apart. */
const shown = 0.1

export interface MostPoints {
  at: SweepPoint
  points: number
  /** Reductions around it, with as many motors, that cost at most a shown digit. */
  low: number
  high: number
}

/** The most points within the limits, of equal ones with fewer motors; null: none known. */
export function mostPoints(rows: readonly SearchRow[]): MostPoints | null {
  let best: { row: SearchRow; place: number; points: number } | null = null
  for (const row of [...rows].sort((a, b) => a.motors - b.motors)) {
    for (const [place, found] of row.match.entries()) {
      if (!found || !row.points[place]!.within || (best && found.points <= best.points + 1e-9)) continue
      best = { row, place, points: found.points }
    }
  }
  if (!best) return null
  const { row, place, points } = best
  const close = (at: number) =>
    row.points[at]?.within === true && (row.match[at]?.points ?? -Infinity) >= points - shown
  let [first, last] = [place, place]
  while (close(first - 1)) first--
  while (close(last + 1)) last++
  return { at: row.points[place]!, points, low: row.points[first]!.reduction, high: row.points[last]!.reduction }
}
