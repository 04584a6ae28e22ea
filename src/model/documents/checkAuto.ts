import type { Path, Problem } from '../errors.ts'
import { placedPoints } from './checkField.ts'
import { idSet, known, knownList } from './checkIds.ts'
import { problem } from './sentences.ts'
import type { Auto, AutoStep, Game, Load, Robot } from './types.ts'

/** A load must be of a known piece and not more than the robot carries. */
export function checkLoad(
  load: Load,
  robot: Robot,
  at: { path: Path; noun: 'preload' | 'holding'; game: Game },
): Problem[] {
  const unknown = known(load.piece, idSet(at.game.pieces), { path: [...at.path, 'piece'], noun: 'piece' })
  if (unknown.length > 0) return unknown
  const most = robot.carries[load.piece] ?? 0
  if (load.count <= most) return []
  return [problem([...at.path, 'count'], 'tooMany', { what: at.noun, piece: load.piece, most, count: load.count })]
}

function checkStep(step: AutoStep, path: Path, game: Game): Problem[] {
  const problems: Problem[] = []
  if (step.at > game.clock.auto) {
    problems.push(problem([...path, 'at'], 'stepTooLate', { auto: game.clock.auto, at: step.at }))
  }
  problems.push(...known(step.piece, idSet(game.pieces), { path: [...path, 'piece'], noun: 'piece' }))
  const goal = game.goals.find(({ id }) => id === step.goal)
  problems.push(...known(step.goal, idSet(game.goals), { path: [...path, 'goal'], noun: 'goal' }))
  if (problems.length === 0 && goal && !goal.accepts.includes(step.piece)) {
    problems.push(problem([...path, 'piece'], 'notAccepted', { goal: step.goal, piece: step.piece }))
  }
  return problems
}

/** An autonomous routine must begin, score and end at what the game has, within its time. */
export function checkAuto(auto: Auto, path: Path, of: { game: Game; robot: Robot }): Problem[] {
  const { game, robot } = of
  const ends = idSet(placedPoints(game))
  return [
    ...knownList(auto.starts, idSet(game.starts), { path: [...path, 'starts'], noun: 'start' }),
    ...auto.steps.flatMap((step, index) => checkStep(step, [...path, 'steps', index], game)),
    ...known(auto.endsAt, ends, { path: [...path, 'endsAt'], noun: 'start or spot' }),
    ...(auto.holding ? checkLoad(auto.holding, robot, { path: [...path, 'holding'], noun: 'holding', game }) : []),
    ...(auto.takes ?? []).flatMap(({ source }, index) =>
      known(source, idSet(game.sources), { path: [...path, 'takes', index, 'source'], noun: 'source' }),
    ),
  ]
}
