import { beginning, moves, type State } from './moves.ts'
import type { TickGame } from './tickGame.ts'

/** The best sum of points over every sequence of legs, each tried out: no table, no bound. */
export function bestByEnumeration(rules: TickGame): number {
  return after(
    beginning(rules),
    rules.ticks,
    rules.goals.map(({ capacity }) => capacity ?? Number.POSITIVE_INFINITY),
  )

  function after(state: State, left: number, room: number[]): number {
    let best = 0
    for (const move of moves(rules, state)) {
      if (move.goal !== null && room[move.goal] === 0) continue
      const counted = move.counts.slice(0, move.goal === null ? 0 : room[move.goal]!)
      const inTime = counted.filter((ticks) => ticks <= left)
      let value = inTime.reduce((sum, ticks) => sum + move.pay(left - ticks), 0)
      if (move.ticks <= left) {
        if (move.to === null) value += move.pay(left - move.ticks)
        else value += after(move.to, left - move.ticks, lessRoom(room, move.goal, counted.length))
      }
      if (value > best) best = value
    }
    return best
  }
}

function lessRoom(room: number[], goal: number | null, count: number): number[] {
  return goal === null ? room : room.map((places, i) => (i === goal ? places - count : places))
}
