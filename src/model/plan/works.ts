import type { Workspace } from '../kernel/index.ts'
import { Ahead, group } from './ahead.ts'
import { tie } from './finishes.ts'
import type { GraphNode } from './graph.ts'
import type { Problem } from './problem.ts'
import { roomsAt } from './rooms.ts'
import type { TablePlaces } from './table.ts'

/** A collect or score leg of a node, with what its Q is made of. */
export interface Work {
  readonly action: number
  readonly id: number
  /** Of the goal's room, −1 where there is none; its stride in room indices. */
  readonly dimension: number
  readonly stride: number
  /** Expected pay by the room that a load finds; null for a collect leg. */
  readonly pays: readonly Float64Array[] | null
  readonly load: number
  readonly successes: Float64Array
}

/** Rooms one after the other, and the place of the best values of the first one. */
export interface RoomRun {
  readonly r: number
  readonly many: number
  readonly best: number
}

function worksOf({ legPays, successes, rooms }: Problem, node: GraphNode): Work[] {
  return node.legs.flatMap((leg, action) => {
    if (leg.to < 0) return []
    const dimension = leg.goal < 0 ? -1 : (rooms.dimensionOf[leg.goal] as number)
    const none = new Float64Array(0)
    return {
      action,
      id: leg.id,
      dimension,
      stride: rooms.strides[dimension] ?? 0,
      pays: legPays[leg.id]?.points ?? null,
      load: leg.load,
      successes: successes[leg.id] ?? none,
    }
  })
}

/** Q of collect and score legs within a block of times, found when asked for. */
export class Works {
  /** Per node. */
  readonly of: readonly Work[][]
  /** Length of what `find` writes. */
  readonly width: number
  private readonly ahead: Ahead
  private readonly space: Workspace
  private readonly places: TablePlaces
  /** Room by dimension and room index. */
  private readonly roomAt: Int32Array[]
  /** Place of each leg's pay within the block, a stretch per room that a load finds; which of them are there. */
  private readonly payAt: number[]
  private readonly paid: Uint8Array[]
  private from = 0

  /** Takes places of the workspace. */
  constructor(problem: Problem, places: TablePlaces, block: number, space: Workspace) {
    const { rooms, graph, timed } = problem
    this.space = space
    this.places = places
    this.of = graph.nodes.map((node) => worksOf(problem, node))
    this.roomAt = roomsAt(rooms)
    this.ahead = new Ahead(problem, places, block, space)
    const { width } = this.ahead
    this.width = width
    const stretches = timed.map(({ leg }) => (leg.goal >= 0 ? leg.load + 1 : 0))
    this.payAt = stretches.map((many) => (many > 0 ? space.take(many * width) : 0))
    this.paid = stretches.map((many) => new Uint8Array(many))
  }

  /** Begin the block at time left `from`: the values of all times before it are in the table. */
  begin(from: number): void {
    this.from = from
    this.ahead.begin(from)
    for (const paid of this.paid) paid.fill(0)
  }

  /** Whether a leg comes into question: a goal, if it is one, has room. */
  open({ dimension }: Work, r: number): boolean {
    return dimension < 0 || (this.roomAt[dimension]?.[r] as number) > 0
  }

  /**
   * Q of a leg by time within the block, for the groups `first` … `last`: the place of time 0 in the workspace, where
   * only the times asked for are there. It may be `into`, a place of `width` numbers, which is overwritten then.
   */
  find(work: Work, r: number, groups: { first: number; last: number }, into: number): number {
    const { ahead, space } = this
    const { id, dimension, stride, load, successes } = work
    const { first, last } = groups
    const start = first * group
    const count = (last + 1) * group - start
    if (dimension < 0) {
      ahead.ask(id, r, first, last)
      const place = ahead.row(id) + r * ahead.width
      if (!work.pays) return place
      space.kernel.combine(into + start, this.pay(work, load) + start, place + start, count, 1)
      return into
    }
    const room = this.roomAt[dimension]?.[r] as number
    let base = this.pay(work, Math.min(room, load))
    for (let b = 0; b <= load; b++) {
      const p = successes[b] as number
      if (!(p > 0)) continue
      const after = r - Math.min(b, room) * stride
      ahead.ask(id, after, first, last)
      space.kernel.combine(into + start, base + start, ahead.row(id) + after * ahead.width + start, count, p)
      base = into
    }
    return into
  }

  /**
   * Offers Q of a leg in the block's first group of times to the best values of `many` rooms from `r` on, which come one after the
   * other: the best of the first stand at `best`, those of the next a row of the table further. `into` has a group for each room.
   */
  offerRooms(work: Work, { r, many, best }: RoomRun, into: number, spare: number): void {
    const { dimension, load } = work
    if (dimension < 0) {
      this.offerRun(work, { r, many, best }, into, spare)
      return
    }
    const rooms = this.roomAt[dimension] as Int32Array
    const { row } = this.places
    for (let k = 0; k < many; k++) {
      // Rooms with less than a load are one by one; from a load on all of it counts.
      const room = rooms[r + k] as number
      if (room === 0) continue
      let end = k + 1
      if (room >= load) while (end < many && (rooms[r + end] as number) >= load) end++
      this.offerRun(work, { r: r + k, many: end - k, best: best + k * row }, into, spare)
      k = end - 1
    }
  }

  private offerRun(work: Work, { r, many, best }: RoomRun, into: number, spare: number): void {
    const { ahead, space, places } = this
    const { id, dimension, stride, load, successes } = work
    const rows = ahead.row(id)
    let q = rows + r * ahead.width
    let apart = ahead.width
    if (dimension < 0) {
      ahead.askRooms(id, r, many)
      if (work.pays) {
        space.kernel.combineRows(into, group, this.pay(work, load), 0, q, apart, many, 1)
        q = into
        apart = group
      }
    } else {
      const room = this.roomAt[dimension]?.[r] as number
      q = this.pay(work, Math.min(room, load))
      apart = 0
      for (let b = 0; b <= load; b++) {
        const p = successes[b] as number
        if (!(p > 0)) continue
        const after = r - Math.min(b, room) * stride
        ahead.askRooms(id, after, many)
        space.kernel.combineRows(into, group, q, apart, rows + after * ahead.width, ahead.width, many, p)
        q = into
        apart = group
      }
    }
    space.kernel.offerRows(best, places.row, spare, q, apart, many, tie)
  }

  /** Q of a leg at one time within the block. */
  at(work: Work, r: number, j: number): number {
    const { ahead } = this
    const { data } = this.space
    const { id, dimension, stride, load, successes, pays } = work
    const g = Math.floor(j / group)
    if (dimension < 0) {
      ahead.ask(id, r, g, g)
      const next = data[ahead.row(id) + r * ahead.width + j] as number
      return pays ? next + (pays[load]?.[this.from + j] as number) : next
    }
    const room = this.roomAt[dimension]?.[r] as number
    let sum = pays?.[Math.min(room, load)]?.[this.from + j] as number
    for (let b = 0; b <= load; b++) {
      const p = successes[b] as number
      if (!(p > 0)) continue
      const after = r - Math.min(b, room) * stride
      ahead.ask(id, after, g, g)
      sum += p * (data[ahead.row(id) + after * ahead.width + j] as number)
    }
    return sum
  }

  /** Place of a leg's pay within the block where its load finds so much room. */
  private pay({ id, pays }: Work, room: number): number {
    const { width, from } = this
    const place = (this.payAt[id] as number) + room * width
    const paid = this.paid[id] as Uint8Array
    if (paid[room] === 0) {
      const all = pays?.[room] as Float64Array
      const { data } = this.space
      const count = Math.min(width, all.length - from)
      for (let j = 0; j < count; j++) data[place + j] = all[from + j] as number
      paid[room] = 1
    }
    return place
  }
}
