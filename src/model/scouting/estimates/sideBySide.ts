import type { TeamDraws } from './draws.ts'
import type { EventEstimates } from './event.ts'
import { autonomousPointDraws, finishPointDraws, pointDraws } from './points.ts'
import { estimateOf } from './summary.ts'
import { type Compared, compared, type Estimate } from './types.ts'

export interface SideBySide {
  teams: string[]
  /** Points of goals in teleop, finish and autonomous of each, in a match that it plays to its end. */
  total: Estimate[]
  /** Chance that the expectation of the team of the row is better than that of the column; null where nothing is known of it. */
  better: { [quantity in Compared]: number[][] | null }
}

/**
 * Teams side by side on common draws: draw d of all teams belongs to one state of the event, so that what they share does not
 * blur which is better. Ties count half.
 */
export function sideBySide(event: EventEstimates, teams: readonly string[]): SideBySide {
  const all = teams.map((team) => drawsOf(event, event.draws(team)))
  return {
    teams: [...teams],
    total: all.map(({ total }, t) => estimateOf(total!, { ownWeight: event.team(teams[t]!).points.ownWeight })),
    better: Object.fromEntries(
      compared.map((quantity) => [
        quantity,
        all.some((each) => each[quantity] === null)
          ? null
          : chances(
              all.map((each) => each[quantity]!),
              quantity === 'trip',
            ),
      ]),
    ) as SideBySide['better'],
  }
}

function drawsOf(event: EventEstimates, draws: TeamDraws): { [quantity in Compared]: Float64Array | null } {
  const { game, holdSeconds = {} } = event.input
  const points = pointDraws(game, draws, holdSeconds)
  const [finishPoints, autonomousPoints] = [finishPointDraws(game, draws), autonomousPointDraws(game, draws)]
  return {
    total: points.map((each, d) => each + (finishPoints[d] as number) + (autonomousPoints[d] as number)),
    points,
    attempts: draws.attempts,
    trip: draws.trips?.median ?? null,
    finishPoints,
    autonomousPoints,
  }
}

function chances(all: readonly Float64Array[], fewer: boolean): number[][] {
  return all.map((own) => all.map((other) => chanceOfMore(fewer ? other : own, fewer ? own : other)))
}

function chanceOfMore(own: Float64Array, other: Float64Array): number {
  let sum = 0
  for (let d = 0; d < own.length; d++) {
    const [a, b] = [own[d] as number, other[d] as number]
    sum += a > b ? 1 : a === b ? 0.5 : 0
  }
  return sum / own.length
}
