import type { Game, Robot } from '../../../src/model/documents/types.ts'
import type { DriveInput } from '../../../src/model/timing/index.ts'
import { askModel } from '../../worker/client.ts'

/** Ways to ask for at most: the fit is over lengths, and more of them change it little. */
const mostWays = 24

/** The pairs of spots between which a robot drives: every source that it collects from with every goal that it scores at. */
export function drivenWays(game: Game, robot: Robot): { from: string; to: string }[] {
  const sources = game.sources.filter(({ id }) => robot.collect[id])
  const goals = game.goals.filter(({ id }) => robot.score[id])
  const spotsOf = (goal: (typeof goals)[number]) => {
    const entries = robot.score[goal.id] ?? []
    return goal.spots.filter(({ id }) => entries.some(({ spots }) => spots === 'any' || spots.includes(id)))
  }
  return sources
    .flatMap((source) => source.spots)
    .flatMap((from) => goals.flatMap(spotsOf).map((to) => ({ from: from.id, to: to.id })))
    .slice(0, mostWays)
}

/** Lengths of the game's legs as this robot drives them (m), each alike; undefined where it drives none. */
export async function gameLegs(game: Game, robot: Robot): Promise<DriveInput['legs']> {
  const ways = await Promise.allSettled(
    drivenWays(game, robot).map(({ from, to }) => askModel('travel', { game, robot, from, to }, { asked: true })),
  )
  // A spot that can not be reached is said on the design's own screen.
  const lengths = ways.flatMap((way) =>
    way.status === 'fulfilled' && way.value.length >= 0.01 ? [way.value.length] : [],
  )
  return lengths.length > 0
    ? lengths.map((length) => ({ length: Math.min(200, Number(length.toFixed(3))), weight: 1 }))
    : undefined
}
