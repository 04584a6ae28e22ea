import { Workspace } from '../kernel/index.ts'
import { AmountRows, negligible } from './amountRows.ts'
import type { GraphLeg, GraphNode } from './graph.ts'
import { type Problem, reachedIn } from './problem.ts'
import { type Arrival, Arrivals, atOnce, blocks, Clip, runEnd, runFrom } from './run.ts'
import { sum, weighted } from './sums.ts'
import { type Policy, stop, wait } from './table.ts'
import type { Tally } from './tally.ts'
import { Unfinished } from './unfinished.ts'
import { Vectors } from './vectors.ts'

/** Distribution of a tally: [amount, probability], rising, in the tally's own unit (points or pieces). */
export type Spread = [number, number][]

/**
 * The exact distribution of a tally under a policy, on the tally's fine lattice. For every node, room and amount so
 * far, the probability of a decision there is a function of time left. Blocks of times are carried through the legs at
 * once, and again what comes to lie within the block, until nothing is left there.
 */
export function spreadOf(problem: Problem, policy: Policy, tally: Tally): Float64Array {
  const space = Workspace.borrowed()
  const spread = new SpreadPass(problem, policy, tally, space).run()
  space.giveBack()
  return spread
}

/** A vector over the fine lattice as [amount, probability], what is negligible left out. */
export function listed(mass: Float64Array, unit: number, least = 5e-10): Spread {
  const out: Spread = []
  for (let i = 0; i < mass.length; i++)
    if ((mass[i] as number) > least) out.push([Math.round(i * unit * 1e9) / 1e9, mass[i] as number])
  const total = out.reduce((sum, [, p]) => sum + p, 0)
  return out.map(([amount, p]) => [amount, p / total])
}

class SpreadPass {
  private readonly problem: Problem
  private readonly policy: Policy
  private readonly tally: Tally
  private readonly space: Workspace
  private readonly long: Vectors
  private readonly coarse: AmountRows[]
  private readonly fine: AmountRows[]
  private readonly final: Float64Array
  private readonly arrivals: Arrivals
  private readonly clip: Clip
  private readonly unfinished: Unfinished

  constructor(problem: Problem, policy: Policy, tally: Tally, space: Workspace) {
    this.problem = problem
    this.policy = policy
    this.tally = tally
    this.space = space
    const { graph, rooms, steps } = problem
    const amounts = Math.ceil(tally.most + 1e-6) + 2
    this.long = new Vectors(space, steps + 1)
    const short = new Vectors(space, Math.max(1, tally.fineBelow))
    this.coarse = graph.nodes.map(() => new AmountRows(this.long, rooms.size, amounts))
    this.fine = graph.nodes.map(() => new AmountRows(short, rooms.size, amounts * tally.lattice.ratio))
    this.final = new Float64Array(amounts * tally.lattice.ratio)
    this.arrivals = new Arrivals(problem, space, negligible)
    this.clip = Clip.of(problem)
    this.unfinished = new Unfinished(problem, tally, this.final)
  }

  run(): Float64Array {
    const { graph, rooms, steps, autonomous } = this.problem
    for (const outcome of autonomous.outcomes) {
      const one = atOnce(this.space, outcome.probability, steps)
      this.arrive({ n: graph.initial, r: rooms.index(outcome.room), amount: this.tally.initial(outcome) }, one, 1)
    }
    for (const { from, to } of blocks(this.problem)) {
      // Nothing arrives above a block any more.
      this.long.length = to + 1
      while (this.wave(from, to));
    }
    this.unfinished.finish()
    const total = this.final.reduce((sum, p) => sum + p, 0)
    return this.final.map((p) => p / total)
  }

  /** Takes up what waits for its decision in a block of times; false where nothing did. */
  private wave(from: number, to: number): boolean {
    let any = false
    const { nodes } = this.problem.graph
    for (let n = 0; n < nodes.length; n++) {
      const node = nodes[n] as GraphNode
      if (this.rows(this.coarse[n] as AmountRows, n, node, 1, from, to)) any = true
      if (
        from < this.tally.fineBelow &&
        this.rows(this.fine[n] as AmountRows, n, node, this.tally.lattice.ratio, from, to)
      )
        any = true
    }
    return any
  }

  private rows(rows: AmountRows, n: number, node: GraphNode, ratio: number, from: number, to: number): boolean {
    const { vectors } = rows
    const actions = this.policy.actions[n] as Int16Array
    let any = false
    // What arrives at this very node meanwhile is appended, and taken up with the rest.
    for (const slot of rows.active) {
      const low = Math.max(from, vectors.low[slot] as number)
      const high = Math.min(to, vectors.high[slot] as number)
      if (low > high) continue
      any = true
      const state = rows.stateOf(slot)
      const r = state.room
      const amount = state.amount / ratio
      const start = vectors.place[slot] as number
      const policyAt = r * this.policy.row + this.policy.pad
      const row = { at: start, actions, policyAt }
      for (let t = runFrom(this.space.data, row, low, high, negligible); t <= high; ) {
        const end = runEnd(this.space.data, row, t, high, negligible)
        const action = actions[policyAt + t] as number
        if (action === stop || end === 1) this.end(sum(this.space.data, start + t, end - t), amount)
        else if (action === wait) this.wait(n, r, amount, sum(this.space.data, start + t, end - t))
        else this.leg(node.legs[action] as GraphLeg, r, amount, start + t, t, end - t)
        // The workspace may have grown meanwhile.
        t = runFrom(this.space.data, row, end, high, negligible)
      }
      vectors.clearFrom(slot, low)
    }
    rows.retire()
    return any
  }

  /** The match ends with `amount` (coarse units, real): shared between the neighbouring points of the fine lattice. */
  private end(chance: number, amount: number): void {
    if (chance <= 0) return
    const place = amount * this.tally.lattice.ratio
    const whole = Math.min(Math.floor(place + 1e-6), this.final.length - 1)
    const share = Math.max(0, place - whole)
    if (share < 1e-6 || whole + 1 >= this.final.length) this.final[whole] = (this.final[whole] as number) + chance
    else {
      this.final[whole] = (this.final[whole] as number) + chance * (1 - share)
      this.final[whole + 1] = (this.final[whole + 1] as number) + chance * share
    }
  }

  private wait(n: number, r: number, amount: number, chance: number): void {
    const one = atOnce(this.space, chance, this.problem.rules.finishFrom)
    this.arrive({ n, r, amount }, one, 1)
  }

  private leg(leg: GraphLeg, r: number, amount: number, start: number, at: number, count: number): void {
    const { problem, tally } = this
    const { data } = this.space
    if (leg.to < 0) {
      const done = weighted(data, start, at, count, reachedIn(problem, leg.id))
      this.end(done * leg.success, amount + tally.finished(leg.points))
      this.end(done * (1 - leg.success), amount + tally.finished(leg.otherwise))
      this.end(sum(data, start, count) - done, amount)
      return
    }
    const d = leg.goal < 0 ? -1 : (problem.rooms.dimensionOf[leg.goal] as number)
    const room = d < 0 ? leg.load : problem.rooms.room(r, d)
    const stride = d < 0 ? 0 : (problem.rooms.strides[d] as number)
    const successes = leg.goal < 0 ? null : (problem.successes[leg.id] as Float64Array)
    const fine = Math.round(amount * tally.lattice.ratio)
    this.unfinished.note(leg, Math.min(room, leg.load), fine, data, start, at, count)
    const whole = this.arrivals.of(start, at, count, problem.timed[leg.id] as Problem['timed'][number])
    const arrival = whole && trimmed(this.space.data, whole)
    if (!arrival) return
    if (!successes) {
      this.arrive({ n: leg.to, r, amount }, arrival, 1)
      return
    }
    const each = arrival.first < tally.fineBelow && room > 0 ? tally.heldEach(leg, Math.min(room, leg.load)) : null
    for (let b = 0; b <= leg.load; b++) {
      const chance = successes[b] as number
      if (chance * arrival.most < negligible) continue
      const placed = Math.min(b, room)
      const to = { n: leg.to, r: r - placed * stride, amount }
      this.arrive(to, arrival, chance, placed > 0 ? { leg, placed, each } : null)
    }
  }

  /**
   * Mass arrives at a node in room r (to be clipped) with an amount, to which come the pieces that a leg has placed; what they
   * bring may depend on the time left. Stretches of one room and one amount are added at once.
   */
  private arrive(to: Arrived, arrival: Arrival, chance: number, brought: Brought | null = null): void {
    if (chance * arrival.most < negligible) return
    const { fineBelow } = this.tally
    const end = arrival.first + arrival.count
    if (arrival.first < fineBelow) this.arriveLate(to, arrival, chance, brought)
    const start = Math.max(arrival.first, fineBelow)
    if (start >= end) return
    const amount = to.amount + (brought === null ? 0 : this.amountOf(brought, start))
    const rows = this.coarse[to.n] as AmountRows
    for (let t = start; t < end; ) {
      const until = this.clip.sameUntil(to.r, t, end)
      this.share(rows, this.clip.at(to.r, t), amount, arrival, chance, t, until - t)
      t = until
    }
  }

  /** What arrives so late that amounts depend on the time left. */
  private arriveLate(to: Arrived, arrival: Arrival, chance: number, brought: Brought | null): void {
    const { ratio } = this.tally.lattice
    const { first } = arrival
    const end = Math.min(first + arrival.count, this.tally.fineBelow)
    const rows = this.fine[to.n] as AmountRows
    const single = brought !== null && !this.tally.steady(brought.leg)
    for (let t = first; t < end; ) {
      const until = single ? t + 1 : this.clip.sameUntil(to.r, t, end)
      // In the last seconds most robots are done, each with an amount of its own.
      const alone = single ? chance * (this.space.data[arrival.at + t - first] as number) : 1
      if (alone >= negligible) {
        const room = this.clip.at(to.r, t)
        const amount = to.amount + (brought === null ? 0 : this.amountOf(brought, t))
        if (!single) this.share(rows, room, amount * ratio, arrival, chance, t, until - t)
        else if (this.isOver(to.n, room, t)) this.end(alone, amount)
        else {
          const place = amount * ratio
          const whole = Math.floor(place + 1e-6)
          const share = place - whole < 1e-6 ? 0 : place - whole
          rows.addOne(room, whole, alone * (1 - share), t)
          if (share > 0) rows.addOne(room, whole + 1, alone * share, t)
        }
      }
      t = until
    }
  }

  private amountOf({ leg, placed, each }: Brought, t: number): number {
    return each && t < each.length ? placed * (each[t] as number) : this.tally.placed(leg, placed, t)
  }

  private isOver(n: number, room: number, t: number): boolean {
    const { actions, row, pad } = this.policy
    return actions[n]?.[room * row + pad + t] === stop
  }

  /** Adds a stretch from time `t` on to rows at a place on their lattice; what lies between two points goes to both. */
  private share(
    rows: AmountRows,
    room: number,
    place: number,
    arrival: Arrival,
    chance: number,
    t: number,
    count: number,
  ): void {
    const whole = Math.floor(place + 1e-6)
    const share = place - whole < 1e-6 ? 0 : place - whole
    rows.add(room, whole, chance * (1 - share), arrival, t, count)
    if (share > 0) rows.add(room, whole + 1, chance * share, arrival, t, count)
  }
}

/** What arrives without its negligible ends, which no share of it can bring back: looked for once instead of for each share. */
function trimmed(data: Float64Array, { at, first, count, most }: Arrival): Arrival | null {
  let low = 0
  let high = count - 1
  while (low <= high && (data[at + low] as number) < negligible) low++
  while (high > low && (data[at + high] as number) < negligible) high--
  return low > high ? null : { at: at + low, first: first + low, count: high - low + 1, most }
}

/** What a leg has placed, and what each piece of a held load brings by the time left. */
interface Brought {
  readonly leg: GraphLeg
  readonly placed: number
  readonly each: Float64Array | null
}

/** Where mass arrives: node, room, and amount so far. */
interface Arrived {
  readonly n: number
  readonly r: number
  readonly amount: number
}
