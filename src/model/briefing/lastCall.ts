import { inOrder } from '../event/order.ts'
import { slotsOf } from '../event/seats.ts'
import type { Match, Observation, Result } from '../scouting/types.ts'
import { type AgreedPlan, plansInForce } from './agreed.ts'
import type { LastCall } from './copies.ts'

/** How a robot ended a match, as it was seen. */
export interface Ending {
  match: string
  team: string
  /** Time left (s) at which it left for its finish; null: nobody saw it leave. */
  left: number | null
  /** What it achieved; null: nothing, missing: nobody said. */
  finish?: string | null
}

/** How robots ended the matches that records tell of; of several records of one robot the last that says more. */
export function endingsOf(
  clock: { auto: number; pause: number; teleop: number },
  records: readonly { observation: Observation; team: string }[],
): Ending[] {
  const end = clock.auto + clock.pause + clock.teleop
  const by = new Map<string, Ending>()
  for (const { observation, team } of records) {
    const { match, subject, timeline, departedAt, finish } = observation
    if (match === null || subject !== 'robot') continue
    const at = departedAt ?? timeline?.findLast(({ what }) => what === 'left')?.elapsed
    const key = JSON.stringify([match, team])
    const before = by.get(key)
    const achieved = finish ? finish.achieved : before?.finish
    by.set(key, {
      ...{ match, team },
      left: at === undefined ? (before?.left ?? null) : Math.max(0, end - at),
      ...(achieved !== undefined && { finish: achieved }),
    })
  }
  return [...by.values()]
}

/** What was called in our last match with an agreed plan before this one, and what happened. */
export function lastCallOf(of: {
  matches: readonly Match[]
  results: readonly Result[]
  plans: readonly AgreedPlan[]
  endings: readonly Ending[]
  own: readonly string[]
  /** The match that is briefed. */
  before: string
}): LastCall | null {
  const ordered = of.matches.toSorted(inOrder)
  const until = ordered.findIndex(({ id }) => id === of.before)
  const plans = plansInForce(of.plans)
  const last = ordered
    .slice(0, until < 0 ? ordered.length : until)
    .findLast((match) => plans.has(match.id) && slotsOf(match).some(({ slot }) => of.own.includes(slot.team)))
  if (!last) return null
  const { body } = plans.get(last.id)!
  const result = of.results.find(({ match }) => match === last.id)
  const other = body.alliance === 'red' ? 'blue' : 'red'
  return {
    match: last.id,
    score: result ? { ours: result[body.alliance].points.total, theirs: result[other].points.total } : null,
    robots: body.jobs.map(({ team, call }) => {
      const ending = of.endings.find((each) => each.match === last.id && each.team === team)
      return {
        team,
        called: call,
        left: ending?.left ?? null,
        ...(ending?.finish !== undefined && { finish: ending.finish }),
      }
    }),
  }
}
