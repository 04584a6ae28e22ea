import type { Problem } from '../errors.ts'
import { checkField } from './checkField.ts'
import { idSet, idsOf, known, knownKeys, knownList, unique } from './checkIds.ts'
import { problem } from './sentences.ts'
import type { Bonus, Clock, Game } from './types.ts'

function checkClock({ teleop, endgame }: Clock): Problem[] {
  if (teleop <= 0) return [problem(['clock', 'teleop'], 'noTeleop', { teleop })]
  if (endgame <= teleop) return []
  return [problem(['clock', 'endgame'], 'longEndgame', { teleop, endgame })]
}

function checkPlaces(game: Game): Problem[] {
  const pieces = idSet(game.pieces)
  return [
    ...game.sources.flatMap(({ piece }, index) =>
      known(piece, pieces, { path: ['sources', index, 'piece'], noun: 'piece' }),
    ),
    ...game.goals.flatMap(({ accepts }, index) =>
      knownList(accepts, pieces, { path: ['goals', index, 'accepts'], noun: 'piece' }),
    ),
  ]
}

function checkBonus({ name, metric, atLeast }: Bonus, index: number, game: Game): Problem[] {
  const path = ['bonuses', index, 'metric']
  const problems: Problem[] = []
  if (typeof atLeast === 'object' && Object.keys(atLeast).length === 0) {
    problems.push(problem(['bonuses', index, 'atLeast'], 'noLevel', { bonus: name }))
  }
  if (metric.kind === 'pieces') {
    problems.push(...knownList(metric.goals, idSet(game.goals), { path: [...path, 'goals'], noun: 'goal' }))
  } else if (metric.kind === 'finished') {
    problems.push(...knownList(metric.finishes, idSet(game.finishes), { path: [...path, 'finishes'], noun: 'finish' }))
  } else if (metric.kind === 'heldSeconds') {
    problems.push(...known(metric.goal, idSet(game.goals), { path: [...path, 'goal'], noun: 'goal' }))
    if (game.goals.find(({ id }) => id === metric.goal)?.award.kind === 'each') {
      problems.push(problem([...path, 'goal'], 'notHeld', { goal: metric.goal }))
    }
  }
  return problems
}

function checkStanding(game: Game): Problem[] {
  const goals = idSet(game.goals)
  return [
    ...game.sets.flatMap(({ needs }, index) =>
      knownKeys(needs, goals, { path: ['sets', index, 'needs'], noun: 'goal' }),
    ),
    ...game.bonuses.flatMap((bonus, index) => checkBonus(bonus, index, game)),
    ...game.ranking.then.flatMap((breaker, index) =>
      typeof breaker === 'string'
        ? []
        : knownList(breaker.pieces, goals, { path: ['ranking', 'then', index, 'pieces'], noun: 'goal' }),
    ),
  ]
}

/**
 * What a game of the right shape can still get wrong: ids, references, the clock, outlines and symmetry.
 * Each problem has its path from the game's root and a sentence.
 */
export function checkGame(game: Game): Problem[] {
  const lists = ['pieces', 'sources', 'goals', 'finishes', 'sets', 'bonuses'] as const
  return [
    ...lists.flatMap((list) => unique(idsOf(game[list], [list]), list)),
    ...checkClock(game.clock),
    ...checkField(game),
    ...checkPlaces(game),
    ...checkStanding(game),
  ]
}
