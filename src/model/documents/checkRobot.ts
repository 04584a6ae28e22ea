import type { Path, Problem } from '../errors.ts'
import { checkAir } from './checkAir.ts'
import { checkAuto, checkLoad } from './checkAuto.ts'
import { placedPoints } from './checkField.ts'
import { checkHabit } from './checkHabit.ts'
import { idSet, idsOf, known, knownKeys, knownList, unique } from './checkIds.ts'
import { checkMechanisms } from './checkMechanisms.ts'
import { checkNetwork } from './checkNetwork.ts'
import { checkPace } from './checkPace.ts'
import { problem } from './sentences.ts'
import type { Game, Robot } from './types.ts'

function checkCollect(game: Game, robot: Robot): Problem[] {
  return Object.entries(robot.collect).flatMap(([id, trip]) => {
    const path = ['collect', id]
    const problems = [...known(id, idSet(game.sources), { path, noun: 'source' }), ...checkNetwork(trip, path)]
    if (trip.retry === null && trip.success < 1) {
      problems.push(problem([...path, 'retry'], 'noRetry', { success: trip.success }))
    }
    const piece = game.sources.find((source) => source.id === id)?.piece
    if (piece !== undefined && robot.carries[piece] === undefined) {
      problems.push(problem(['carries'], 'notCarried', { piece, source: id }))
    }
    return problems
  })
}

function checkEntrySpots(spots: string[] | 'any', path: Path, at: { game: Game; goal: string }): Problem[] {
  const goal = at.game.goals.find(({ id }) => id === at.goal)
  if (spots === 'any' || !goal) return []
  return knownList(spots, idSet(goal.spots), { path, noun: { spotOfGoal: at.goal } })
}

function checkScore(game: Game, robot: Robot): Problem[] {
  return Object.entries(robot.score).flatMap(([goal, entries]) => [
    ...known(goal, idSet(game.goals), { path: ['score', goal], noun: 'goal' }),
    ...entries.flatMap((entry, index) => {
      const path = ['score', goal, index]
      return [...checkNetwork(entry, path), ...checkEntrySpots(entry.spots, [...path, 'spots'], { game, goal })]
    }),
  ])
}

function checkFinish(game: Game, robot: Robot): Problem[] {
  const finishes = idSet(game.finishes)
  return Object.entries(robot.finish).flatMap(([id, trip]) => {
    const path = ['finish', id]
    const problems = [...known(id, finishes, { path, noun: 'finish' }), ...checkNetwork(trip, path)]
    if (trip.otherwise === id) {
      problems.push(problem([...path, 'otherwise'], 'otherwiseItself', { finish: id }))
    } else if (trip.otherwise !== null) {
      problems.push(...known(trip.otherwise, finishes, { path: [...path, 'otherwise'], noun: 'finish' }))
    }
    return problems
  })
}

function checkTimes(game: Game, { drive }: Robot): Problem[] {
  const spots = idSet(placedPoints(game))
  const told = new Set<string>()
  return (drive.times ?? []).flatMap((time, index) => {
    const path = ['drive', 'times', index]
    const { from, to } = time
    const problems = (['from', 'to'] as const).flatMap((end) =>
      known(time[end], spots, { path: [...path, end], noun: 'start or spot' }),
    )
    // The same both ways, so that a drive back is the same drive.
    const pair = [from, to].toSorted().join(' ')
    if (from === to) problems.push(problem([...path, 'to'], 'driveNowhere', {}))
    else if (told.has(pair)) problems.push(problem([...path, 'to'], 'driveTwice', {}))
    told.add(pair)
    return problems
  })
}

/**
 * What a robot of the right shape can still get wrong for this game: ids, networks, loads, pace, routines.
 * Each problem has its path from the robot's root and a sentence.
 */
export function checkRobot(game: Game, robot: Robot): Problem[] {
  return [
    ...checkPace(robot.drive.pace),
    ...checkTimes(game, robot),
    ...knownKeys(robot.carries, idSet(game.pieces), { path: ['carries'], noun: 'piece' }),
    ...(robot.preload ? checkLoad(robot.preload, robot, { path: ['preload'], noun: 'preload', game }) : []),
    ...checkCollect(game, robot),
    ...checkScore(game, robot),
    ...checkFinish(game, robot),
    ...unique(idsOf(robot.autos, ['autos']), 'routines'),
    ...robot.autos.flatMap((auto, index) => checkAuto(auto, ['autos', index], { game, robot })),
    ...checkHabit(game, robot),
    ...checkMechanisms(robot),
    ...checkAir(game, robot),
  ]
}
