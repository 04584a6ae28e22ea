import { refusal } from '../documents/sentences.ts'
import type { Game, Option, Robot } from '../documents/types.ts'
import { expectedRooms } from '../plan/bands.ts'
import { loadsFor, type Planner, type Solved } from '../plan/index.ts'

/** What one more piece in hand is worth at a source's spot, against time left in teleop. */
export interface PieceWorth {
  spot: string
  piece: string
  /** For each load that the plan considers, rising: the worth of one more piece up to it, at whole seconds left. */
  loads: { from: number; to: number; at: [secondsLeft: number, points: number][] }[]
}

/**
 * The worth of one more piece in hand: with t seconds left at a spot of a source,
 *
 *     [V(t, spot, holding n) − V(t, spot, holding m)] / (n − m)
 *
 * points, m the next smaller load that the plan considers (first 0, empty hands). V is the value of the solved plan:
 * what the robot still earns on average if it goes on as well as it can. So it is not the piece's award, but what having
 * it saves: with much time left a piece is worth the trip that need not be made for it, and with too little time to
 * score it nothing. At form 1 and at the room in goals with a capacity that is expected by then.
 *
 * Throws ModelError 'invalid' where the robot collects nothing at the spot.
 */
export function pieceWorth(game: Game, option: Option, ask: { spot: string; planner: Planner }): PieceWorth {
  const source = game.sources.find(
    ({ id, spots }) =>
      spots.some(({ id: spot }) => spot === ask.spot) &&
      option.role.sources.includes(id) &&
      option.robot.collect[id] !== undefined,
  )
  const carries = source ? (option.robot.carries[source.piece] ?? 0) : 0
  if (!source || carries < 1) throw refusal('invalid', ['collectsNothing', { option: option.name, spot: ask.spot }])
  const value = valuesFrom(ask.planner.solved(standingAt(option, ask.spot)))
  const teleop = Math.floor(game.clock.teleop + 1e-9)
  const worth = (load: number, less: number): [number, number][] =>
    Array.from({ length: teleop + 1 }, (_, t) => {
      const gain = value(t, ask.spot, load) - value(t, ask.spot, less)
      return [t, gain / (load - less)]
    })
  const loads = loadsFor(carries)
  return {
    spot: ask.spot,
    piece: source.piece,
    loads: loads.map((to, index) => {
      const from = index === 0 ? 0 : loads[index - 1]!
      return { from, to, at: worth(to, from) }
    }),
  }
}

/** The same option, its teleop beginning at the spot with empty hands, at form 1: that makes the spot's empty node. */
function standingAt(option: Option, spot: string): Option {
  const routine = option.robot.autos.find(({ id }) => id === option.auto)
  const there: Robot['autos'][number] = {
    id: 'there',
    name: 'there',
    starts: [option.start],
    steps: [],
    leaves: 0,
    ...routine,
    endsAt: spot,
    holding: null,
  }
  return {
    ...option,
    auto: there.id,
    robot: { ...option.robot, form: { spread: 1 }, autos: [there] },
  }
}

/** V(t, spot, load) at whole seconds left, read from the table of a solved plan at the room expected then. */
function valuesFrom({ problem, table, forms }: Solved): (t: number, spot: string, load: number) => number {
  const rooms = expectedRooms(problem, forms[0]!.flow)
  return (t, spot, load) => {
    const node = problem.graph.nodes.findIndex(({ at, load: held }) => at === spot && (held?.count ?? 0) === load)
    const step = Math.min(problem.steps, Math.round(t / problem.step))
    const values = table.values[node]
    if (!values) throw new RangeError(`no place '${spot}' with ${load} in hand`)
    return values[rooms[step]! * table.row + table.pad + step]!
  }
}
