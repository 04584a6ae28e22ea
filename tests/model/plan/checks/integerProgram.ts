import loadHighs from 'highs'
import { beginning, type Move, moves, type State } from './moves.ts'
import type { TickGame } from './tickGame.ts'

interface Arc {
  from: string
  to: string | null
  points: number
  goal: number | null
  placed: number
}

/**
 * The best sum of points by a mixed-integer program: a path through the network of (state, ticks left), one binary
 * variable a leg, the goals' capacities as side constraints. Solved by HiGHS.
 */
export async function bestByIntegerProgram(rules: TickGame): Promise<number> {
  const { arcs, origin } = network(rules)
  const paying = arcs.filter(({ points }) => points > 0)
  if (paying.length === 0) return 0
  const highs = await loadHighs()
  const solution = highs.solve(program(rules, arcs, origin), { mip_rel_gap: 0, mip_abs_gap: 1e-7 })
  if (solution.Status !== 'Optimal') throw new Error(`HiGHS ended with '${solution.Status}'`)
  return solution.ObjectiveValue
}

function network(rules: TickGame): { arcs: Arc[]; origin: string } {
  const key = (state: State, left: number) => `${state.at}:${state.piece}:${state.count}:${left}`
  const arcs: Arc[] = []
  const seen = new Set<string>()
  const open: [State, number][] = [[beginning(rules), rules.ticks]]
  for (let next = open.pop(); next; next = open.pop()) {
    const [state, left] = next
    const from = key(state, left)
    if (seen.has(from)) continue
    seen.add(from)
    for (const move of moves(rules, state)) {
      const ends = move.ticks <= left && move.to !== null
      if (ends) open.push([move.to!, left - move.ticks])
      const to = ends ? key(move.to!, left - move.ticks) : null
      arcs.push(...outcomes(move, left).map((outcome): Arc => ({ from, to, goal: move.goal, ...outcome })))
    }
  }
  return { arcs, origin: key(beginning(rules), rules.ticks) }
}

/** A score leg may place fewer pieces than it brings: what is over the goal's room is lost. */
function outcomes(move: Move, left: number): { points: number; placed: number }[] {
  if (move.goal === null) {
    const late = move.ticks > left
    return late ? [] : [{ points: move.to === null ? move.pay(left - move.ticks) : 0, placed: 0 }]
  }
  const inTime = move.counts.filter((ticks) => ticks <= left)
  return inTime.map((_, i) => ({
    points: inTime.slice(0, i + 1).reduce((sum, ticks) => sum + move.pay(left - ticks), 0),
    placed: i + 1,
  }))
}

function program(rules: TickGame, arcs: Arc[], origin: string): string {
  const out = new Map<string, string[]>()
  const into = new Map<string, string[]>()
  const add = (map: Map<string, string[]>, at: string, term: string) => map.set(at, [...(map.get(at) ?? []), term])
  arcs.forEach((arc, i) => {
    add(out, arc.from, `x${i}`)
    if (arc.to !== null) add(into, arc.to, `x${i}`)
  })
  const flow = [...out].map(([state, leaving], i) => {
    const arriving = (into.get(state) ?? []).map((term) => ` - ${term}`).join('\n')
    return `f${i}: ${leaving.join('\n + ')}${arriving} <= ${state === origin ? 1 : 0}`
  })
  const capacities = rules.goals.flatMap(({ capacity }, goal) => {
    const placing = arcs.flatMap((arc, i) => (arc.goal === goal ? [`${arc.placed} x${i}`] : []))
    return capacity === null || placing.length === 0 ? [] : [`c${goal}: ${placing.join('\n + ')} <= ${capacity}`]
  })
  const objective = arcs.flatMap((arc, i) => (arc.points > 0 ? [`${arc.points} x${i}`] : []))
  return [
    'Maximize',
    `points: ${objective.join('\n + ')}`,
    'Subject To',
    ...flow,
    ...capacities,
    'Binary',
    ...arcs.map((_, i) => `x${i}`),
    'End',
  ].join('\n')
}
