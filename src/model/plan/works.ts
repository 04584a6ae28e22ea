import type { Workspace } from '../kernel/index.ts'
import { Ahead, group } from './ahead.ts'
import type { GraphNode } from './graph.ts'
import type { Problem } from './problem.ts'
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
  /** What was found last: by time within the block. */
  readonly q: Float64Array
  private readonly ahead: Ahead
  private readonly data: Float64Array
  /** Room by dimension and room index. */
  private readonly roomAt: Int32Array[]

  /** Takes the last places of the workspace: it must not grow afterwards. */
  constructor(problem: Problem, places: TablePlaces, block: number, space: Workspace) {
    const { rooms, graph } = problem
    this.of = graph.nodes.map((node) => worksOf(problem, node))
    this.roomAt = rooms.most.map((_, d) => Int32Array.from({ length: rooms.size }, (_, r) => rooms.room(r, d)))
    this.ahead = new Ahead(problem, places, block, space)
    this.data = space.data
    this.q = new Float64Array(this.ahead.width)
  }

  /** Begin the block at time left `from`: the values of all times before it are in the table. */
  begin(from: number): void {
    this.ahead.begin(from)
  }

  /** Whether a leg comes into question: a goal, if it is one, has room. */
  open({ dimension }: Work, r: number): boolean {
    return dimension < 0 || (this.roomAt[dimension]?.[r] as number) > 0
  }

  /** Q of a collect or score leg into q, for the groups `first` … `last` of the block. */
  find(
    { id, dimension, stride, pays, load, successes }: Work,
    r: number,
    from: number,
    first: number,
    last: number,
  ): void {
    const { q, ahead, data } = this
    const { width } = ahead
    const start = first * group
    const end = (last + 1) * group
    const row = ahead.row(id)
    if (dimension < 0) {
      ahead.ask(id, r, first, last)
      const place = row + r * width
      if (!pays) for (let j = start; j < end; j++) q[j] = data[place + j] as number
      else {
        const own = pays[load] as Float64Array
        for (let j = start; j < end; j++) q[j] = (own[from + j] as number) + (data[place + j] as number)
      }
      return
    }
    const room = this.roomAt[dimension]?.[r] as number
    const own = (pays as readonly Float64Array[])[Math.min(room, load)] as Float64Array
    let base: Float64Array = own
    let shift = from
    for (let b = 0; b <= load; b++) {
      const p = successes[b] as number
      if (!(p > 0)) continue
      const after = r - Math.min(b, room) * stride
      ahead.ask(id, after, first, last)
      const place = row + after * width
      for (let j = start; j < end; j++) q[j] = (base[shift + j] as number) + p * (data[place + j] as number)
      base = q
      shift = 0
    }
  }
}
