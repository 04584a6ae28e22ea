import type { Path, Problem } from '../errors.ts'
import { idSet, knownKeys } from './checkIds.ts'
import type { HabitDraw } from './habit.ts'
import { problem } from './sentences.ts'
import type { Game, Robot } from './types.ts'

/** What a robot's habit, and each draw of what it may be instead, gets wrong: ids, times, loads, shares. */
export function checkHabit(game: Game, robot: Robot): Problem[] {
  const { habit } = robot
  if (!habit) return []
  const { draws = [], unhindered = {} } = habit
  const places = idSet([...game.sources, ...game.goals, ...game.finishes])
  return [
    ...checkNumbers(game, robot, habit, ['habit']),
    ...knownKeys(unhindered, places, { path: ['habit', 'unhindered'], noun: 'place' }),
    ...draws.flatMap((draw, k) => checkNumbers(game, robot, { ...habit, ...draw }, ['habit', 'draws', k])),
  ]
}

function checkNumbers(game: Game, { carries, finish }: Robot, numbers: HabitDraw, path: Path): Problem[] {
  const { goals = {}, pieces = {}, departs = 0, success = {} } = numbers
  const problems = [
    ...knownKeys(goals, idSet(game.goals), { path: [...path, 'goals'], noun: 'goal' }),
    ...knownKeys(success, idSet(game.goals), { path: [...path, 'success'], noun: 'goal' }),
    ...Object.keys(numbers.finish ?? {})
      .filter((id) => !Object.hasOwn(finish, id))
      .map((id) => problem([...path, 'finish', id], 'noEntry', { thing: 'finish', id })),
  ]
  const { teleop } = game.clock
  if (departs > teleop) problems.push(problem([...path, 'departs'], 'lateHabit', { teleop, departs }))
  const most = Math.max(0, ...Object.values(carries))
  for (const count of Object.keys(pieces))
    if (Number(count) > most)
      problems.push(problem([...path, 'pieces', count], 'longTrip', { most, count: Number(count) }))
  const some = (shares: { [id: string]: number }) => Object.values(shares).some((share) => share > 0)
  if (some(goals) && !some(pieces)) problems.push(problem([...path, 'pieces'], 'noShares', {}))
  return problems
}
