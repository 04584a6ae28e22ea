import { solve } from '../plan/backward.ts'
import { binomial } from '../plan/binomial.ts'
import { type GraphLeg, legsAt, type TravelTime } from '../plan/graph.ts'
import { finishValue, inEveryRoom, type Problem, problemOf } from '../plan/problem.ts'
import { follow, type Table } from '../plan/table.ts'
import { cumulative, type LegPay, legPay, type TimedLeg, timedLeg } from '../plan/timed.ts'
import type { Player, Stand } from './player.ts'

/** Grid of the plans (s). */
export const step = 0.1

/** What a leg is worth to begin, by time left: made when first asked for. */
interface Worth {
  readonly leg: GraphLeg
  readonly timed: TimedLeg
  readonly pay: LegPay | null
  readonly successes: Float64Array | null
  readonly reached: Float64Array | null
}

/** What a player would rather do: Q of every leg by time left and room, from the plan of its robot alone. */
export class Choices {
  readonly problem: Problem
  readonly table: Table
  /** Time left (steps) above which collect and score legs may begin, and up to which finishes may. */
  readonly workAbove: number
  readonly finishFrom: number
  private readonly player: Player
  private readonly travel: TravelTime
  private readonly worths: (readonly Worth[])[] = []

  constructor(player: Player, slowdown: number) {
    const { game, option, builder } = player
    this.player = player
    this.travel = slowdown === 0 ? player.travel : (from, to) => (1 + slowdown) * player.travel(from, to)
    this.problem = inEveryRoom(problemOf(game, option, this.travel, builder, { step, fastest: 1 }))
    this.table = solve(this.problem)
    this.workAbove = this.problem.rules.workAbove
    this.finishFrom = this.problem.rules.finishFrom
  }

  /** Q of one leg of a stand (points), as its plan counts it: 0 where the rules of the option forbid to begin it. */
  q(stand: Stand, leg: number, room: number, t: number): number {
    const worth = this.worthsOf(stand)[leg] as Worth
    if (worth.reached ? t > this.finishFrom : t <= this.workAbove) return 0
    return this.qOf(worth, room, t)
  }

  private qOf({ leg, timed, pay, successes, reached }: Worth, r: number, t: number): number {
    if (reached) return finishValue(leg) * (reached[t] as number)
    const { rooms } = this.problem
    const { pad, row } = this.table
    const next = this.table.values[leg.to] as Float64Array
    const d = leg.goal < 0 ? -1 : (rooms.dimensionOf[leg.goal] as number)
    if (d < 0) return (pay?.points[leg.load]?.[t] ?? 0) + follow(next, r * row + pad, t, timed)
    const room = rooms.room(r, d)
    if (room === 0 || !pay || !successes) return 0
    let sum = pay.points[Math.min(room, leg.load)]?.[t] as number
    for (let b = 0; b <= leg.load; b++) {
      const p = successes[b] as number
      if (p > 0) sum += p * follow(next, (r - Math.min(b, room) * (rooms.strides[d] as number)) * row + pad, t, timed)
    }
    return sum
  }

  private worthsOf(stand: Stand): readonly Worth[] {
    const known = this.worths[stand.index]
    if (known) return known
    const { problem, player } = this
    const found =
      stand.planned >= 0
        ? (problem.graph.nodes[stand.planned] as (typeof problem.graph.nodes)[number]).legs.map((leg) => ({
            leg,
            timed: problem.timed[leg.id] as TimedLeg,
            pay: problem.legPays[leg.id] as LegPay | null,
            successes: problem.successes[leg.id] as Float64Array | null,
            reached: problem.reached[leg.id] as Float64Array | null,
          }))
        : legsAt(player.game, player.option, this.travel, {
            graph: problem.graph,
            node: { at: stand.at, load: stand.piece === null ? null : { piece: stand.piece, count: stand.load } },
          }).map((leg) => this.worthOf(leg))
    this.worths[stand.index] = found
    return found
  }

  private worthOf(leg: GraphLeg): Worth {
    const { problem } = this
    const timed = timedLeg(leg, this.player.builder, 1)
    const d = leg.goal < 0 ? -1 : (problem.rooms.dimensionOf[leg.goal] as number)
    return {
      leg,
      timed,
      pay:
        leg.goal < 0
          ? null
          : legPay(
              timed,
              problem.pays[leg.goal]!,
              d < 0 ? null : (problem.rooms.most[d] as number),
              problem.steps,
              step,
            ),
      successes: leg.goal < 0 ? null : binomial(leg.load, leg.success),
      reached: leg.to < 0 ? cumulative(timed.end, problem.steps) : null,
    }
  }
}
