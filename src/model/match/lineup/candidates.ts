import type { Game, Option, Role } from '../../documents/types.ts'
import { Planner } from '../../plan/planner.ts'
import type { ExpectedPoints } from '../../plan/types.ts'
import { habitPoints } from '../habitPoints.ts'
import { allLineups, inRole } from './lineups.ts'
import type { Lineup, LineupRequest } from './types.ts'

/** Line-ups that are played; the others are left out by the closed form. */
export const mostPlayed = 64

/**
 * The line-ups worth playing, the best first, as the closed form has them: each robot's own plan or habit, as if nobody were in
 * its way, less what it leaves undone while it marks and what a goal can not take from all three, and what our markers take
 * from theirs.
 */
export function candidatesFor(request: LineupRequest): Lineup[] {
  const all = allLineups(request)
  if (all.length <= mostPlayed) return all
  const form = new ClosedForm(request)
  const worth = new Map(all.map((lineup) => [lineup, form.margin(lineup)]))
  return [...all].sort((a, b) => worth.get(b)! - worth.get(a)!).slice(0, mostPlayed)
}

/** Expected points without interaction. */
class ClosedForm {
  private readonly request: LineupRequest
  private readonly planner: Planner
  private readonly plans = new Map<string, ExpectedPoints>()
  /** Of each robot in each of its roles. */
  private readonly own: readonly (readonly ExpectedPoints[])[]
  private readonly taken: readonly (readonly number[])[]

  constructor(request: LineupRequest) {
    this.request = request
    // The coarser grid moves points by hundredths, far less than what is left out here.
    this.planner = new Planner(request.game, 0.25)
    const { ours, roles } = request
    this.own = ours.map((option, i) =>
      roles[i]!.map((role) => whileNotMarking(request.game, this.plan(inRole(option, role)), role)),
    )
    this.taken = ours.map((option, i) => roles[i]!.map((role) => this.markedAway(option, role)))
  }

  margin(lineup: Lineup): number {
    const plans = this.own.map((roles, i) => roles[lineup[i]!]!)
    const taken = this.taken.reduce((sum, roles, i) => sum + roles[lineup[i]!]!, 0)
    return plans.reduce((sum, { total }) => sum + total, 0) - this.surplus(plans) + taken
  }

  private plan(option: Option): ExpectedPoints {
    // Marking is no part of a plan.
    const role = { ...option.role, defend: null }
    const key = JSON.stringify([option.robot.id, role, option.start, option.auto, option.finish, option.robot])
    const known =
      this.plans.get(key) ?? habitPoints(this.request.game, option) ?? this.planner.expected({ ...option, role })
    this.plans.set(key, known)
    return known
  }

  /** Points of pieces that find no room on a goal which all three count on. */
  private surplus(plans: readonly ExpectedPoints[]): number {
    return this.request.game.goals.reduce((sum, { id, capacity }) => {
      if (capacity === null) return sum
      const own = plans.map(({ goals }) => goals[id] ?? { pieces: 0, points: 0 })
      const pieces = own.reduce((total, goal) => total + goal.pieces, 0)
      const points = own.reduce((total, goal) => total + goal.points, 0)
      return pieces > capacity ? sum + (points * (pieces - capacity)) / pieces : sum
    }, 0)
  }

  /** Points that a marker takes from its mark: those of the slowed drive less those of its own, for as long as it marks. */
  private markedAway({ robot }: Option, { defend }: Role): number {
    if (!defend) return 0
    const share = marking(this.request.game, defend)
    const { weights, theirs } = this.request
    const total = theirs.reduce((sum, _, k) => sum + (weights?.[k] ?? 1), 0)
    return theirs.reduce((sum, rivals, k) => {
      const mark = rivals[defend.mark] as Option
      const lost = this.plan(mark).total - this.plan(slowed(mark, robot.defence.slowdown)).total
      return sum + ((weights?.[k] ?? 1) / total) * share * lost
    }, 0)
  }
}

/** Share of teleop that is spent marking. */
const marking = ({ clock }: Game, { from, until }: NonNullable<Role['defend']>): number =>
  Math.min(1, (from - until) / clock.teleop)

/** A plan without the pieces of the time spent marking, and without a finish where that goes on to the buzzer. */
function whileNotMarking(game: Game, plan: ExpectedPoints, { defend }: Role): ExpectedPoints {
  if (!defend) return plan
  const left = 1 - marking(game, defend)
  const goals = Object.fromEntries(
    Object.entries(plan.goals).map(([id, { pieces, points }]) => [
      id,
      { pieces: left * pieces, points: left * points },
    ]),
  )
  const finishes = defend.until > 0 ? plan.finishes : {}
  const sum = (parts: { [id: string]: { points: number } }) =>
    Object.values(parts).reduce((all, { points }) => all + points, 0)
  return { ...plan, goals, finishes, total: plan.autonomous + plan.adjust + sum(goals) + sum(finishes) }
}

/** The option whose drives take (1 + slowdown) times as long. */
function slowed(option: Option, slowdown: number): Option {
  const { drive } = option.robot
  const f = 1 / (1 + slowdown)
  const slow = {
    ...drive,
    topSpeed: drive.topSpeed * f,
    acceleration: drive.acceleration * f * f,
    deceleration: drive.deceleration * f * f,
    ...(drive.times && { times: drive.times.map((time) => ({ ...time, seconds: (1 + slowdown) * time.seconds })) }),
  }
  return { ...option, robot: { ...option.robot, drive: slow } }
}
