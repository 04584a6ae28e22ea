import type { Path, Problem } from '../errors.ts'
import { pneumaticMechanisms } from './air.ts'
import { idSet, known } from './checkIds.ts'
import type { TimedLeg } from './timing.ts'
import type { Game, Robot } from './types.ts'

/**
 * What uses air must be moved by air, and trips lead to places of the game. A trip that the robot no longer does is none of
 * it: it takes no air.
 */
export function checkAir(game: Game, { air, ...robot }: Robot): Problem[] {
  if (!air) return []
  const mechanisms = idSet(pneumaticMechanisms(robot))
  const moved = (mechanism: string, path: Path) =>
    known(mechanism, mechanisms, { path: [...path, 'mechanism'], noun: 'mechanism of the robot that air moves' })
  return [
    ...air.trips.flatMap(({ mechanism, leg }, index) => {
      const path = ['air', 'trips', index]
      return [...moved(mechanism, path), ...checkPlace(game, leg, [...path, 'leg'])]
    }),
    ...air.autonomous.flatMap(({ mechanism }, index) => moved(mechanism, ['air', 'autonomous', index])),
  ]
}

function checkPlace(game: Game, leg: TimedLeg, path: Path): Problem[] {
  if (leg.kind === 'collect')
    return known(leg.source, idSet(game.sources), { path: [...path, 'source'], noun: 'source' })
  if (leg.kind === 'score') return known(leg.goal, idSet(game.goals), { path: [...path, 'goal'], noun: 'goal' })
  return known(leg.finish, idSet(game.finishes), { path: [...path, 'finish'], noun: 'finish' })
}
