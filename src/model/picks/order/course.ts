import {
  allianceOf,
  bestOf,
  follow,
  membersOf,
  onTurn,
  type Selection,
  type SelectionState,
} from '../selection/index.ts'

export interface CourseOf {
  selection: Selection
  us: string
  /** Place of each team in the order by which everybody invites. */
  order: ReadonlyMap<string, number>
  /** Whom we do not invite. */
  aside: ReadonlySet<string>
}

/** How a selection ends. */
export interface Course {
  ours: string[]
  others: string[][]
}

/** Whom we can invite, or could if it were our turn. */
export function candidatesOf({ selection, us, aside }: Pick<CourseOf, 'selection' | 'us' | 'aside'>): string[] {
  const { state } = selection
  const own = new Set(ownOf(state, us))
  return state.free.filter((team) => !own.has(team) && !aside.has(team))
}

/** Our alliance as it is; we alone, where we are in none. */
export function ownOf(state: SelectionState, us: string): string[] {
  const own = allianceOf(state, us)
  return own ? membersOf(own) : [us]
}

/**
 * The selection to its end, when we get a team at our first turn and everybody else takes the best of the order that is free.
 * Nobody invites us: whether we should accept is another question.
 */
export function courseWith(of: CourseOf, first: string): Course {
  const { us, order, aside } = of
  let got = false
  const end = follow(of.selection, (state) => {
    if (!onTurn(state, us))
      return bestOf(
        state.free.filter((team) => team !== us && (got || team !== first)),
        order,
      )
    if (got || !state.free.includes(first)) return bestOf(openTo(state, aside), order)
    got = true
    return first
  })
  const ours = ownOf(end.state, us)
  // Where we have no turn to come, we are compared as if we could still invite whoever is left in the end.
  const whole = got || ours.includes(first) || ours.length >= end.state.rules.size ? ours : [...ours, first]
  for (const { size } = end.state.rules; whole.length < Math.min(size, 3); ) {
    const next = bestOf(
      openTo(end.state, aside).filter((team) => !whole.includes(team)),
      order,
    )
    if (next === null) break
    whole.push(next)
  }
  const others = end.state.alliances.map(membersOf).filter((each) => each.length > 0 && !each.includes(us))
  return { ours: whole, others: others.map((each) => each.filter((team) => !whole.includes(team))) }
}

/** The best team that we can expect to be still free at our next turn, or after the selection where we have none; null: nobody. */
export function replacementFor(of: CourseOf): string | null {
  const { us, order, aside } = of
  let { selection } = of
  const candidates = candidatesOf(of)
  if (onTurn(selection.state, us)) {
    // Somebody has to be taken now: the last of the order, whom nobody else will want.
    const last = candidates.toSorted((a, b) => (order.get(b) ?? 0) - (order.get(a) ?? 0))[0]
    if (last === undefined) return null
    selection = selection.take({ kind: 'accepts', team: last })
  }
  const then = follow(selection, (state) =>
    onTurn(state, us)
      ? null
      : bestOf(
          state.free.filter((team) => team !== us),
          order,
        ),
  )
  return bestOf(candidatesOf({ selection: then, us, aside }), order)
}

const openTo = ({ free }: SelectionState, aside: ReadonlySet<string>): string[] =>
  free.filter((team) => !aside.has(team))
