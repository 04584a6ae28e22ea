import type { Option } from '../../model/documents/types.ts'
import type { EventInput } from '../../model/scouting/estimates/index.ts'
import type { Known } from '../records/known.ts'
import type { Context } from '../trpc.ts'
import type { Input } from './estimates.ts'

/** Draws of what is believed of each team, one after the other from match to match. */
export const draws = 200

/** Teams as robots of simulated matches, by what was seen of them. */
export type Robots = Map<string, Promise<Option>>

/** Teams as robots by all records of an event, for as long as nothing new is known of it. */
const kept = new WeakMap<Known, Robots>()

/** The robots that were worked out from what is known of an event now; more may be added by `sharedRobots`. */
export function robotsBy(known: Known): Robots {
  const before = kept.get(known)
  if (before) return before
  const fresh: Robots = new Map()
  kept.set(known, fresh)
  return fresh
}

/**
 * Teams of an event as robots of a match, in the order in which they are asked for. Each is worked out once for what is known of
 * the event, whoever asks: forecasts, briefings and picks share them.
 */
export async function robotsKept(
  ctx: Pick<Context, 'pool'>,
  { input, known }: Pick<Input, 'input' | 'known'>,
  teams: readonly string[],
): Promise<Option[]> {
  return sharedRobots(ctx, { input, teams, robots: robotsBy(known) })
}

/** Teams as robots by records that no other match shares. */
export function robotsOf(
  { pool }: Pick<Context, 'pool'>,
  input: EventInput,
  teams: readonly string[],
): Promise<Option[]> {
  const all = [...new Set([...input.teams, ...teams])]
  // Whoever asked first may go: the others wait for the same answer.
  return pool.run('observed', { input: { ...input, teams: all }, teams, draws }, new AbortController().signal)
}

/** Robots that other matches meet too are worked out once. */
export function sharedRobots(
  ctx: Pick<Context, 'pool'>,
  { input, teams, robots }: { input: EventInput; teams: readonly string[]; robots: Robots },
): Promise<Option[]> {
  const missing = teams.filter((team) => !robots.has(team))
  if (missing.length > 0) {
    for (const some of parts(missing)) {
      const all = robotsOf(ctx, input, some)
      for (const [k, team] of some.entries()) {
        const one = all.then((options) => options[k]!)
        robots.set(team, one)
        one.catch(() => robots.delete(team))
      }
    }
  }
  return Promise.all(teams.map((team) => robots.get(team)!))
}

/** Robots that one thread works out at a time, each about a tenth of a second: others get their turn between, and two threads share them. */
const atOnce = 8

const parts = <Of>(all: readonly Of[]): Of[][] =>
  Array.from({ length: Math.ceil(all.length / atOnce) }, (_, k) => all.slice(k * atOnce, (k + 1) * atOnce))
