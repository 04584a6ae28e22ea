import { solve } from '../plan/backward.ts'
import { binomial } from '../plan/binomial.ts'
import { type GraphLeg, legsAt, type TravelTime } from '../plan/graph.ts'
import { finishValue, inEveryRoom, type Problem, problemOf, reachedIn } from '../plan/problem.ts'
import type { Table } from '../plan/table.ts'
import { type LegPay, legPay, type TimedLeg, timedLeg } from '../plan/timed.ts'
import type { PlannedPlayer } from './planned.ts'
import type { Stand } from './player.ts'

/** Grid of the plans (s). */
export const step = 0.1

/** Times left that are looked at together. */
export const group = 8

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
  private readonly player: PlannedPlayer
  private readonly travel: TravelTime
  private readonly worths: (readonly Worth[])[] = []

  constructor(player: PlannedPlayer, slowdown: number) {
    const { game, option, builder } = player
    this.player = player
    this.travel = slowdown === 0 ? player.travel : (from, to) => (1 + slowdown) * player.travel(from, to)
    this.problem = inEveryRoom(problemOf(game, option, this.travel, builder, { step, fastest: 1 }))
    this.table = solve(this.problem)
    this.workAbove = this.problem.rules.workAbove
    this.finishFrom = this.problem.rules.finishFrom
  }

  /**
   * Q of one leg of a stand (points) with `t` … `t + 7` steps left, as its plan counts it, into `out`: 0 where the rules of the
   * option forbid to begin it, or beyond the plan's time. Eight at once cost little more than one.
   */
  eight(stand: Stand, leg: number, room: number, t: number, out: Float64Array): void {
    const worth = this.worthsOf(stand)[leg] as Worth
    out.fill(0)
    if (worth.reached) this.finishing(worth, worth.reached, t, out)
    else this.working(worth, room, t, out)
  }

  private finishing({ leg }: Worth, reached: Float64Array, t: number, out: Float64Array): void {
    const value = finishValue(leg)
    const end = Math.min(group, Math.min(this.finishFrom, this.problem.steps) - t + 1)
    for (let j = 0; j < end; j++) out[j] = value * (reached[t + j] as number)
  }

  private working({ leg, timed, pay, successes }: Worth, r: number, t: number, out: Float64Array): void {
    const { rooms, steps } = this.problem
    const { pad, row } = this.table
    const next = this.table.values[leg.to] as Float64Array
    const d = leg.goal < 0 ? -1 : (rooms.dimensionOf[leg.goal] as number)
    const room = d < 0 ? leg.load : rooms.room(r, d)
    if (leg.goal >= 0 && (room === 0 || !pay || !successes)) return
    const end = Math.min(group, steps - t + 1)
    if (d < 0) followed(next, r * row + pad, t, timed, 1, out)
    else
      for (let b = 0; b <= leg.load; b++) {
        const p = successes?.[b] as number
        const after = r - Math.min(b, room) * (rooms.strides[d] as number)
        if (p > 0) followed(next, after * row + pad, t, timed, p, out)
      }
    const points = pay?.points[Math.min(room, leg.load)]
    for (let j = 0; j < group; j++)
      if (j >= end || t + j <= this.workAbove) out[j] = 0
      else if (points) out[j] = (out[j] as number) + (points[t + j] as number)
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
            reached: leg.to < 0 ? reachedIn(problem, leg.id) : null,
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
      reached: leg.to < 0 ? timed.reached(problem.steps) : null,
    }
  }
}

/** Adds p · Σ_c f(c) · V(t + j − c) for j = 0 … 7: the value of what follows a leg that begins with t + j steps left. */
function followed(
  values: Float64Array,
  start: number,
  t: number,
  { chance, shortest, late, lateAt }: TimedLeg,
  p: number,
  out: Float64Array,
): void {
  let [a, b, c, d, e, f, g, h] = [0, 0, 0, 0, 0, 0, 0, 0]
  // What would end after the buzzer reads the zeros in front of the row.
  const add = (mass: number, from: number) => {
    a += mass * (values[from] as number)
    b += mass * (values[from + 1] as number)
    c += mass * (values[from + 2] as number)
    d += mass * (values[from + 3] as number)
    e += mass * (values[from + 4] as number)
    f += mass * (values[from + 5] as number)
    g += mass * (values[from + 6] as number)
    h += mass * (values[from + 7] as number)
  }
  const count = Math.min(chance.length, t + group - shortest)
  for (let i = 0; i < count; i++) add(chance[i] as number, start + t - shortest - i)
  for (let k = 0; k < late.length && (lateAt[k] as number) < t + group; k++)
    add(late[k] as number, start + t - (lateAt[k] as number))
  for (const [j, sum] of [a, b, c, d, e, f, g, h].entries()) out[j] = (out[j] as number) + p * sum
}
