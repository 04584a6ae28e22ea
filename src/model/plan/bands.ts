import { legValue } from './evaluate.ts'
import type { Flow } from './forward.ts'
import type { GraphLeg, GraphNode } from './graph.ts'
import { finishValue, type Problem, reachedIn } from './problem.ts'
import { stop, type Table, wait } from './table.ts'
import type { Action, Band, LeaveBy, PlanNode } from './types.ts'

/** What leaving for a finish may cost before it counts as too late (points). */
const lateCost = 0.5

/** Room index to be expected with t steps left: capacity less the expected pieces placed by then, rounded. */
export function expectedRooms(problem: Problem, flow: Flow): Int32Array {
  const { rooms, autonomous, steps } = problem
  const start = rooms.goals.map((_, d) =>
    autonomous.outcomes.reduce((sum, o) => sum + o.probability * (o.room[d] as number), 0),
  )
  const placed = flow.placed()
  return Int32Array.from({ length: steps + 1 }, (_, t) =>
    rooms.index(start.map((room, d) => Math.max(0, Math.round(room - (placed[d]?.[t] as number))))),
  )
}

/** The policy of every node as bands of time left, at the expected room. */
export function policyBands(problem: Problem, table: Table, rooms: Int32Array): { node: PlanNode; bands: Band[] }[] {
  return problem.graph.nodes.map((node, n) => ({ node: named(node), bands: bandsOf(problem, table, rooms, n, node) }))
}

const named = (node: GraphNode): PlanNode => ({ at: node.at, load: node.load })

function bandsOf(problem: Problem, table: Table, rooms: Int32Array, n: number, node: GraphNode): Band[] {
  const bands: Band[] = []
  const actions = table.actions[n] as Int16Array
  let from = problem.steps
  const at = (t: number) => actions[(rooms[t] as number) * table.row + table.pad + t] as number
  for (let t = problem.steps; t >= 0; t--) {
    if (t > 0 && same(at(t - 1), at(t))) continue
    bands.push({ from: seconds(problem, from), to: seconds(problem, t), action: actionOf(node, at(t)) })
    from = t
  }
  return bands
}

/** A robot that waits for the call does nothing, as one that has stopped. */
const same = (a: number, b: number) => a === b || (a < 0 && b < 0)

const actionOf = (node: GraphNode, action: number): Action =>
  action === stop || action === wait ? { kind: 'stop' } : (node.legs[action] as GraphLeg).action

/** A grid time without the digits that binary fractions add. */
const seconds = (problem: Problem, t: number) => Math.round(t * problem.step * 1e6) / 1e6

/** Per node: the first band, as time runs down, in which a finish is best, and how long leaving for it still pays. */
export function leaveTimes(problem: Problem, table: Table, rooms: Int32Array): LeaveBy[] {
  const out: LeaveBy[] = []
  for (const [n, node] of problem.graph.nodes.entries()) {
    const band = bandsOf(problem, table, rooms, n, node).find((other) => other.action.kind === 'finish')
    if (band?.action.kind !== 'finish') continue
    const { finish, spot } = band.action
    const leg = node.legs.find(
      (other) => other.action.kind === 'finish' && other.action.finish === finish && other.action.spot === spot,
    )
    if (leg) out.push(leaveTime(problem, table, rooms, node, band, leg))
  }
  return out
}

function leaveTime(
  problem: Problem,
  table: Table,
  rooms: Int32Array,
  node: GraphNode,
  band: Band,
  leg: GraphLeg,
): LeaveBy {
  const reached = reachedIn(problem, leg.id)
  const value = (t: number) => finishValue(leg) * (reached[t] as number)
  const top = Math.round(band.from / problem.step)
  // Bands hold for from > t, except the first, which includes teleop's start.
  const first = top === problem.steps ? top : top - 1
  let latest = first
  while (latest > 0 && value(latest - 1) >= value(first) - lateCost) latest--
  let forgone = 0
  for (const other of node.legs) {
    if (other.to < 0 || first <= problem.rules.workAbove) continue
    forgone = Math.max(forgone, legValue(problem, table, other, rooms[first] as number, first) ?? 0)
  }
  return {
    node: named(node),
    finish: leg.action.kind === 'finish' ? leg.action.finish : '',
    from: band.from,
    to: band.to,
    latest: seconds(problem, latest),
    forgone,
  }
}
