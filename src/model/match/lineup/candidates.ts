import type { Option } from '../../documents/types.ts'
import { Planner } from '../../plan/planner.ts'
import type { ExpectedPoints } from '../../plan/types.ts'
import { allLineups, inRole } from './lineups.ts'
import type { Lineup, LineupRequest } from './types.ts'

/** Line-ups that are played; the others are left out by the closed form. */
export const mostPlayed = 64

/**
 * The line-ups worth playing, the best first, as the closed form has them: each robot's own plan, as if nobody were in its
 * way, less what a goal can not take from all three, and what our markers take from theirs.
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

  constructor(request: LineupRequest) {
    this.request = request
    // The coarser grid moves points by hundredths, far less than what is left out here.
    this.planner = new Planner(request.game, 0.25)
  }

  margin(lineup: Lineup): number {
    const { ours, roles } = this.request
    const plans = ours.map((option, i) => this.plan(inRole(option, roles[i]![lineup[i]!]!)))
    const taken = ours.reduce((sum, option, i) => sum + this.markedAway(option, roles[i]![lineup[i]!]!), 0)
    return plans.reduce((sum, { total }) => sum + total, 0) - this.surplus(plans) + taken
  }

  private plan(option: Option): ExpectedPoints {
    const key = JSON.stringify([option.robot.id, option.role, option.start, option.auto, option.finish, option.robot])
    const known = this.plans.get(key) ?? this.planner.expected(option)
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
  private markedAway({ robot }: Option, { defend }: Option['role']): number {
    if (!defend) return 0
    const share = Math.min(1, (defend.from - defend.until) / this.request.game.clock.teleop)
    const { weights, theirs } = this.request
    const total = theirs.reduce((sum, _, k) => sum + (weights?.[k] ?? 1), 0)
    return theirs.reduce((sum, rivals, k) => {
      const mark = rivals[defend.mark] as Option
      const lost = this.plan(mark).total - this.plan(slowed(mark, robot.defence.slowdown)).total
      return sum + ((weights?.[k] ?? 1) / total) * share * lost
    }, 0)
  }
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
  }
  return { ...option, robot: { ...option.robot, drive: slow } }
}
