import type { Game, Goal } from '../../documents/types.ts'
import type { TeamDraws } from './draws.ts'
import { binomialOf, Named } from './pool.ts'

/** Points of a piece placed in teleop; a goal that pays by the second at so many seconds held. */
export const worthOf = ({ id, award }: Goal, holdSeconds: { [goal: string]: number }): number =>
  award.kind === 'each' ? award.teleop : award.teleopPerSecond * (holdSeconds[id] ?? 0)

/** Expected points of goals in teleop, by draw. */
export function pointDraws(game: Game, draws: TeamDraws, holdSeconds: { [goal: string]: number }): Float64Array {
  const { attempts, goals } = draws
  const points = new Float64Array(attempts.length)
  for (const [k, goal] of game.goals.entries()) {
    const each = worthOf(goal, holdSeconds)
    // Nothing is drawn for a goal that brings nothing.
    if (each === 0) continue
    const [share, hit] = [goals[k] as Float64Array, draws.success(k)]
    for (let d = 0; d < points.length; d++)
      points[d]! += each * (attempts[d] as number) * (share[d] as number) * (hit[d] as number)
  }
  return points
}

/** Expected points of the finish, given that it plays and does not stop, by draw. */
export function finishPointDraws({ finishes }: Game, { finish, attempts }: TeamDraws): Float64Array {
  const points = new Float64Array(attempts.length)
  for (const [k, { points: each }] of finishes.entries())
    for (let d = 0; d < points.length; d++) points[d]! += each * (finish[k]![d] as number)
  return points
}

/** Expected points in autonomous, those for moving off the start among them, by draw. */
export function autonomousPointDraws(game: Game, draws: TeamDraws): Float64Array {
  const leave = game.leave?.points ?? 0
  const points = draws.leaves.map((leaves) => leave * leaves)
  for (const [k, { award }] of game.goals.entries()) {
    if (award.kind !== 'each') continue
    for (let d = 0; d < points.length; d++) points[d]! += award.auto * (draws.autonomous[k]![d] as number)
  }
  return points
}

/** The same as `pointDraws` of the next match, whose pieces hit one by one. */
export function nextPointDraws(
  team: string,
  game: Game,
  { draws, holdSeconds }: { draws: TeamDraws; holdSeconds: { [goal: string]: number } },
): Float64Array {
  const { goals } = draws
  const streams = game.goals.map((goal, k) => ({
    each: worthOf(goal, holdSeconds),
    success: draws.success(k),
    here: new Named(`${team} next goal ${k}`),
    hit: new Named(`${team} next hit ${k}`),
  }))
  return draws.nextAttempts.map((pieces, d) => {
    let [left, share, points] = [pieces, 1, 0]
    for (const [k, { each, here, hit, success }] of streams.entries()) {
      const own = goals[k]![d] as number
      const last = k === streams.length - 1
      const tried = last ? left : binomialOf(left, Math.min(1, own / share), here.uniform(d))
      left -= tried
      share = Math.max(1e-12, share - own)
      points += each * binomialOf(tried, success[d] as number, hit.uniform(d))
    }
    return points
  })
}
