import type { Happening } from '../../../src/model/scouting/types.ts'
import { amount } from '../record/form.ts'

/** A tap this near to what happened (s) has found it. */
export const within = 2

export interface Compared {
  what: Happening['what']
  goal: string | undefined
  source: string | undefined
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
