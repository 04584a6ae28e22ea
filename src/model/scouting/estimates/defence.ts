import type { TeamMatch } from '../seen/index.ts'

/** What being defended did to robots of the event. */
export interface DefenceEffect {
  /** Pieces tried per second while defended, over those at other times of the same robots. */
  ratio: number
  /** Share of time that this lets a trip take longer, 1 / ratio − 1. */
  slowdown: number
  interval80: readonly [low: number, high: number]
  /** Seconds that robots were seen defended. */
  seconds: number
}

/** Below this much of it nothing is said (s). */
const fewestSeconds = 60

/**
 * The effect of defence from its intervals: each robot is compared with itself, so that good robots, which are defended more,
 * do not hide it (Mantel–Haenszel ratio of rates). Pieces of a match come in trips, so that the spread is taken from how matches
 * differ.
 *
 * Source: Rothman, Greenland & Lash, Modern Epidemiology (3rd ed. 2008), chapter 15, for the pooled ratio of person-time rates.
 */
export function defenceEffect(seen: Iterable<readonly TeamMatch[]>): DefenceEffect | null {
  const matches = [...seen]
    .flat()
    .flatMap(({ teleop }) => teleop?.defence.received ?? [])
    .filter(({ seconds, freeSeconds }) => seconds > 0 && freeSeconds > 0)
  const seconds = matches.reduce((sum, each) => sum + each.seconds, 0)
  if (seconds < fewestSeconds || matches.length < 3) return null
  const parts = matches.map((each) => {
    const all = each.seconds + each.freeSeconds
    return { over: (each.attempts * each.freeSeconds) / all, under: (each.freeAttempts * each.seconds) / all }
  })
  const over = parts.reduce((sum, part) => sum + part.over, 0)
  const under = parts.reduce((sum, part) => sum + part.under, 0)
  if (!(over > 0 && under > 0)) return null
  const ratio = over / under
  // Of ln ratio, each match's share of it as one draw.
  const off = parts.map((part) => part.over / over - part.under / under)
  const error = Math.sqrt((off.reduce((sum, x) => sum + x * x, 0) * matches.length) / (matches.length - 1))
  const z = 1.2815515655446004
  return {
    ratio,
    slowdown: 1 / ratio - 1,
    interval80: [1 / (ratio * Math.exp(z * error)) - 1, 1 / (ratio * Math.exp(-z * error)) - 1],
    seconds,
  }
}
