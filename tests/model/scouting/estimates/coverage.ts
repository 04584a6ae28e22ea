import { EventEstimates } from '../../../../src/model/scouting/estimates/index.ts'
import type { Estimate } from '../../../../src/model/scouting/estimates/types.ts'
import { type EventShape, game, simulatedEvent } from './simulated.ts'

/** How often intervals held the truth, over whole events: a share by event, since teams of one event share its luck. */
export interface Coverage {
  mean: number
  /** Of the mean, by how events differ, and no less than that of so many teams that had nothing to do with each other. */
  error: number
}

/** The events of a measure: forms, volleys and changes of strategy in turn. */
export const shapeOf = (e: number, of: Pick<EventShape, 'teams' | 'matches' | 'truthIn'>): EventShape => ({
  ...of,
  seed: 300 + e,
  form: [1.0001, 1.1, 1.2][e % 3]!,
  volley: [1, 3, 5, 2][e % 4]!,
  strategy: [0, 0.1, 0.25][Math.floor(e / 2) % 3]!,
})

/** Of a whole number an interval that ends on it holds half: its neighbours decide which half. */
const held = (value: number, [low, high]: readonly [number, number], whole = false): number => {
  if (whole && (value === low || value === high)) return 0.5
  return Number(value >= low && value <= high)
}

/**
 * Coverage by name (level, quantity, stage) of intervals after each of these numbers of matches.
 * @param estimating how estimates are made: others than the program's, to show that this measure can fail
 */
export function coverageOf(
  shapes: readonly EventShape[],
  stages: readonly number[],
  estimating: (seen: EventEstimates['input']['seen']) => EventEstimates = (seen) =>
    new EventEstimates({ game, teams: [...seen.keys()], seen }),
): Map<string, Coverage> {
  const shares = new Map<string, { hits: number; of: number }[]>()
  for (const shape of shapes) {
    const { seen, truth } = simulatedEvent(shape)
    for (const stage of stages) {
      const estimates = estimating(new Map([...seen].map(([team, own]) => [team, own.slice(0, stage)])))
      const counts = new Map<string, { hits: number; of: number }>()
      const note = (name: string, value: number, interval: readonly [number, number] | null, whole = false) => {
        const key = `${name} after ${stage}`
        const count = counts.get(key) ?? { hits: 0, of: 0 }
        counts.set(key, count)
        count.of++
        count.hits += interval ? held(value, interval, whole) : 0
      }
      for (const one of truth) {
        const own = estimates.team(one.team)
        const both = (name: string, value: number, { interval80, interval95 }: Estimate) => {
          note(`80 ${name}`, value, interval80)
          note(`95 ${name}`, value, interval95)
        }
        both('attempts', one.attempts, own.attempts)
        both('points', one.points, own.points)
        both('trip', one.trip, own.trip!.median)
        both('success', one.success.pier, own.goals['pier']!.success)
        both('finish', one.finish, own.finish['davit']!)
        note('80 next attempts', one.next.attempts, own.attempts.next80, true)
        note('80 next points', one.next.points, own.points.next80, true)
      }
      for (const [name, count] of counts) shares.set(name, [...(shares.get(name) ?? []), count])
    }
  }
  return new Map(
    [...shares].map(([name, events]) => {
      const each = events.map(({ hits, of }) => hits / of)
      const mean = each.reduce((sum, share) => sum + share, 0) / each.length
      const squares = each.reduce((sum, share) => sum + (share - mean) ** 2, 0)
      const byEvent = squares / Math.max(1, each.length - 1) / each.length
      const teams = events.reduce((sum, { of }) => sum + of, 0)
      return [name, { mean, error: Math.sqrt(Math.max(byEvent, (mean * (1 - mean)) / teams)) }]
    }),
  )
}
