import type { Path, Problem } from '../errors.ts'
import { placedPoints } from './checkField.ts'
import { idSet, known, knownList, quoted } from './checkIds.ts'
import type { Auto, AutoStep, Game, Load, Robot } from './types.ts'

/** A load must be of a known piece and not more than the robot carries. */
export function checkLoad(load: Load, robot: Robot, at: { path: Path; noun: string; game: Game }): Problem[] {
  const unknown = known(load.piece, idSet(at.game.pieces), { path: [...at.path, 'piece'], noun: 'piece' })
  if (unknown.length > 0) return unknown
  const most = robot.carries[load.piece] ?? 0
  if (load.count <= most) return []
  const message = `${at.noun} must be at most what the robot carries of ${quoted(load.piece)} (${most}), got ${load.count}`
  return [{ path: [...at.path, 'count'], message }]
}

function checkStep(step: AutoStep, path: Path, game: Game): Problem[] {
  const problems: Problem[] = []
  if (step.at > game.clock.auto) {
    const message = `at must lie within the autonomous of ${game.clock.auto} s, got ${step.at}`
    problems.push({ path: [...path, 'at'], message })
  }
  problems.push(...known(step.piece, idSet(game.pieces), { path: [...path, 'piece'], noun: 'piece' }))
  const goal = game.goals.find(({ id }) => id === step.goal)
  problems.push(...known(step.goal, idSet(game.goals), { path: [...path, 'goal'], noun: 'goal' }))
  if (problems.length === 0 && goal && !goal.accepts.includes(step.piece)) {
    const message = `The goal ${quoted(step.goal)} does not accept ${quoted(step.piece)}`
    problems.push({ path: [...path, 'piece'], message })
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
