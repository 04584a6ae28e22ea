import type { Path, Problem } from '../errors.ts'
import { checkAuto, checkLoad } from './checkAuto.ts'
import { idSet, idsOf, known, knownKeys, knownList, quoted, unique } from './checkIds.ts'
import { checkNetwork } from './checkNetwork.ts'
import { checkPace } from './checkPace.ts'
import type { Game, Robot } from './types.ts'

function checkCollect(game: Game, robot: Robot): Problem[] {
  return Object.entries(robot.collect).flatMap(([id, trip]) => {
    const path = ['collect', id]
    const problems = [...known(id, idSet(game.sources), { path, noun: 'source' }), ...checkNetwork(trip, path)]
    if (trip.retry === null && trip.success < 1) {
      const message = `With a success of ${trip.success} some tries fail, so retry must say how long another one takes`
      problems.push({ path: [...path, 'retry'], message })
    }
    const piece = game.sources.find((source) => source.id === id)?.piece
    if (piece !== undefined && robot.carries[piece] === undefined) {
      const message = `The robot collects ${quoted(piece)} at ${quoted(id)}, so carries must say how many it holds`
      problems.push({ path: ['carries'], message })
    }
    return problems
  })
}

function checkEntrySpots(spots: string[] | 'any', path: Path, at: { game: Game; goal: string }): Problem[] {
  const goal = at.game.goals.find(({ id }) => id === at.goal)
  if (spots === 'any' || !goal) return []
  return knownList(spots, idSet(goal.spots), { path, noun: `spot of the goal ${quoted(at.goal)}` })
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
      const message = `A failure at ${quoted(id)} can not earn ${quoted(id)} itself`
      problems.push({ path: [...path, 'otherwise'], message })
    } else if (trip.otherwise !== null) {
      problems.push(...known(trip.otherwise, finishes, { path: [...path, 'otherwise'], noun: 'finish' }))
    }
    return problems
  })
}

function checkHabit(game: Game, { habit }: Robot): Problem[] {
  if (!habit) return []
  const problems = knownKeys(habit.goals, idSet(game.goals), { path: ['habit', 'goals'], noun: 'goal' })
  if (habit.departs > game.clock.teleop) {
    const message = `departs is time left in teleop, so at most ${game.clock.teleop} s, got ${habit.departs}`
    problems.push({ path: ['habit', 'departs'], message })
  }
  return problems
}

/**
 * What a robot of the right shape can still get wrong for this game: ids, networks, loads, pace, routines.
 * Each problem has its path from the robot's root and a sentence.
 */
export function checkRobot(game: Game, robot: Robot): Problem[] {
  return [
    ...checkPace(robot.drive.pace),
    ...knownKeys(robot.carries, idSet(game.pieces), { path: ['carries'], noun: 'piece' }),
    ...(robot.preload ? checkLoad(robot.preload, robot, { path: ['preload'], noun: 'preload', game }) : []),
    ...checkCollect(game, robot),
    ...checkScore(game, robot),
    ...checkFinish(game, robot),
    ...unique(idsOf(robot.autos, ['autos']), 'routines'),
    ...robot.autos.flatMap((auto, index) => checkAuto(auto, ['autos', index], { game, robot })),
    ...checkHabit(game, robot),
  ]
}
