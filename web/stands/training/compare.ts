import type { Clock } from '../../../src/model/documents/types.ts'
import type { Happening } from '../../../src/model/scouting/types.ts'
import { periodAt } from '../record/clock.ts'
import type { Tap } from '../record/draft.ts'
import { amount } from '../record/form.ts'

/** A tap this near to what happened (s) has found it. */
export const within = 2

export interface Compared {
  what: Happening['what']
  goal: string | undefined
  source: string | undefined
  /** Of a count: what it is for. */
  period?: 'auto' | 'teleop'
  happened: number
  found: number
  extra: number
  /** Mean of tapped less happened (s), of what was found. */
  late: number | null
}

/** What a simulated match tells; a scout may tap more, which nothing says is wrong. */
const told: ReadonlySet<Happening['what']> = new Set(['scored', 'collected', 'left', 'stopped'])

const keyOf = ({ what, goal, source }: Happening) => `${what} ${goal ?? source ?? ''}`

/**
 * Taps against the truth, by kind and place: each tap finds at most one thing, the pairs nearest in time first. A volley of n is n
 * taps. What happened after the last second that was watched does not count.
 */
export function compare(truth: readonly Happening[], taps: readonly Happening[], until: number): Compared[] {
  const tapped = taps
    .filter(({ what }) => told.has(what))
    .flatMap((tap) => Array.from({ length: amount(tap) }, () => tap))
  const known = truth.filter(({ elapsed }) => elapsed <= until)
  const kinds = new Map([...known, ...tapped].map((each) => [keyOf(each), each]))
  return [...kinds].map(([key, { what, goal, source }]) => {
    const of = (list: readonly Happening[]) => list.filter((each) => keyOf(each) === key)
    const [real, own] = [of(known), of(tapped)]
    const lates = paired(real, own)
    const late = lates.length === 0 ? null : lates.reduce((sum, each) => sum + each, 0) / lates.length
    return { what, goal, source, happened: real.length, found: lates.length, extra: own.length - lates.length, late }
  })
}

/** A count against the truth: no times, only how many were scored in each period. */
export function compareCounts(
  truth: readonly Happening[],
  taps: readonly Tap[],
  { until, clock }: { until: number; clock: Clock },
): Compared[] {
  const periodOf = (elapsed: number) => (['auto', 'pause'].includes(periodAt(clock, elapsed)) ? 'auto' : 'teleop')
  const real = truth
    .filter(({ what, elapsed }) => what === 'scored' && elapsed <= until)
    .map((each) => ({ ...each, period: periodOf(each.elapsed) }) as const)
  const own = taps.filter(({ what }) => what === 'scored')
  const kinds = new Map([...real, ...own].map((each) => [`${each.period} ${each.goal}`, each]))
  return [...kinds.values()].map(({ goal, period = 'teleop' }) => {
    const sum = (of: readonly Tap[]) =>
      of.filter((each) => each.goal === goal && each.period === period).reduce((all, each) => all + amount(each), 0)
    const [happened, counted] = [sum(real), sum(own)]
    const found = Math.min(happened, counted)
    return { what: 'scored', goal, source: undefined, period, happened, found, extra: counted - found, late: null }
  })
}

/** By how much the taps that found something came later than it. */
function paired(real: readonly Happening[], own: readonly Happening[]): number[] {
  const pairs = real
    .flatMap((a, i) => own.map((b, j) => ({ i, j, late: b.elapsed - a.elapsed })))
    .filter(({ late }) => Math.abs(late) <= within)
    .sort((a, b) => Math.abs(a.late) - Math.abs(b.late))
  const [usedReal, usedOwn] = [new Set<number>(), new Set<number>()]
  return pairs.flatMap(({ i, j, late }) => {
    if (usedReal.has(i) || usedOwn.has(j)) return []
    usedReal.add(i)
    usedOwn.add(j)
    return [late]
  })
}
