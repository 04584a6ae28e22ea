import type { TickGame } from './tickGame.ts'

export interface State {
  at: number
  piece: string | null
  count: number
}

/** One leg, worked out from the rules in whole ticks and without the model. */
export interface Move {
  ticks: number
  to: State | null
  /** Ticks from the leg's start at which each piece counts. */
  counts: number[]
  goal: number | null
  /** What one more piece, or the finish, pays with so many ticks left. */
  pay(left: number): number
}

/** Every leg that may be begun in a state. Loads are those that the plan considers for what the robot carries. */
export function moves(rules: TickGame, state: State): Move[] {
  const drive = (to: number) => Math.abs(to - state.at) / 2
  const finishes = rules.finishes.map(
    (end): Move => ({
      ticks: end.ticks + (end.whole ? 0 : drive(end.at)),
      to: null,
      counts: [],
      goal: null,
      pay: () => end.points,
    }),
  )
  if (state.piece === null) {
    const collects = rules.sources.flatMap(({ piece, at, ready, each, most }) =>
      loads(most).map(
        (count): Move => ({
          ticks: Math.max(1, Math.max(drive(at), ready) + count * each),
          to: { at, piece, count },
          counts: [],
          goal: null,
          pay: () => 0,
        }),
      ),
    )
    return [...collects, ...finishes]
  }
  const scores = rules.goals.flatMap((goal, index) =>
    goal.pieces.includes(state.piece!)
      ? goal.ats.map((at): Move => {
          const placed = Math.max(drive(at), goal.ready)
          return {
            ticks: placed + state.count * goal.each,
            to: { at, piece: null, count: 0 },
            counts: Array.from({ length: state.count }, (_, i) => placed + (i + 1) * goal.each),
            goal: index,
            pay: (left) => (goal.hold === null ? goal.points : (goal.points * Math.min(goal.hold, left)) / 10),
          }
        })
      : [],
  )
  return [...scores, ...finishes]
}

export function beginning(rules: TickGame): State {
  return { at: rules.start, piece: rules.preload?.piece ?? null, count: rules.preload?.count ?? 0 }
}

const loads = (carries: number) => [
  ...new Set([1, Math.ceil(carries / 4), Math.ceil(carries / 2), Math.ceil((3 * carries) / 4), carries]),
]
