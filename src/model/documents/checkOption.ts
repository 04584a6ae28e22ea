import type { Problem } from '../errors.ts'
import { idSet, known, knownList, within } from './checkIds.ts'
import { checkRobot } from './checkRobot.ts'
import { problem } from './sentences.ts'
import type { Game, Option } from './types.ts'

function checkRoutine(option: Option): Problem[] {
  if (option.auto === null) return []
  const routine = option.robot.autos.find(({ id }) => id === option.auto)
  if (!routine) return known(option.auto, new Set(), { path: ['auto'], noun: 'routine of the robot' })
  if (routine.starts.includes(option.start)) return []
  return [problem(['auto'], 'routineElsewhere', { routine: routine.name, start: option.start })]
}

function checkHoldSeconds(game: Game, option: Option): Problem[] {
  const holding = game.goals.filter(({ award }) => award.kind === 'hold').map(({ id }) => id)
  const routine = option.robot.autos.find(({ id }) => id === option.auto)
  const used = new Set([
    ...option.role.goals.filter((goal) => Object.hasOwn(option.robot.score, goal)),
    ...(routine?.steps ?? []).map(({ goal }) => goal),
  ])
  return [
    ...Object.keys(option.holdSeconds).flatMap((goal) =>
      known(goal, new Set(holding), { path: ['holdSeconds', goal], noun: 'goal that pays for holding' }),
    ),
    ...holding
      .filter((goal) => used.has(goal) && !Object.hasOwn(option.holdSeconds, goal))
      .map((goal) => problem(['holdSeconds'], 'noHoldSeconds', { goal })),
  ]
}

function checkTimes(game: Game, option: Option): Problem[] {
  const { teleop } = game.clock
  const problems: Problem[] = []
  if (option.finish.mode === 'always' && option.finish.at > teleop) {
    problems.push(problem(['finish', 'at'], 'lateCall', { teleop, at: option.finish.at }))
  }
  const { defend } = option.role
  if (defend && defend.from > teleop) {
    problems.push(problem(['role', 'defend', 'from'], 'earlyDefence', { teleop, from: defend.from }))
  } else if (defend && defend.until >= defend.from) {
    problems.push(problem(['role', 'defend', 'until'], 'emptyDefence', { from: defend.from, until: defend.until }))
  }
  return problems
}

/**
 * What an option of the right shape can still get wrong for this game, its robot included.
 * Each problem has its path from the option's root and a sentence.
 */
export function checkOption(game: Game, option: Option): Problem[] {
  const { role } = option
  return [
    ...within(['robot'], checkRobot(game, option.robot)),
    ...known(option.start, idSet(game.starts), { path: ['start'], noun: 'start' }),
    ...checkRoutine(option),
    ...knownList(role.sources, idSet(game.sources), { path: ['role', 'sources'], noun: 'source' }),
    ...knownList(role.goals, idSet(game.goals), { path: ['role', 'goals'], noun: 'goal' }),
    ...knownList(role.finishes, idSet(game.finishes), { path: ['role', 'finishes'], noun: 'finish' }),
    ...checkHoldSeconds(game, option),
    ...checkTimes(game, option),
  ]
}
