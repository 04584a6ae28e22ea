import { believedOf } from '../../../../src/model/picks/order/believed.ts'
import type { Believed } from '../../../../src/model/picks/order/types.ts'
import type { OrderNow } from './useOrder.ts'

export interface OwnRow {
  team: string
  /** Place in the computed order, from 1; null: it can not be had. */
  computed: number | null
  /** What inviting it first costs against whoever of those after it would gain most; null: nothing. */
  cost: { before: string; by: Believed } | null
}

/** Our own order beside the computed one: teams that it does not name follow as computed. */
export function ownRows(order: readonly string[], { answer, order: now }: OrderNow): OwnRow[] {
  const computed = now.choices.map(({ team }) => team)
  const all = [...order.filter((team) => computed.includes(team)), ...computed.filter((team) => !order.includes(team))]
  const means = new Map(now.choices.map(({ team, gain }) => [team, gain.mean]))
  return all.map((team, k) => {
    const best = all
      .slice(k + 1)
      .reduce<string | null>((most, each) => (most && means.get(most)! >= means.get(each)! ? most : each), null)
    const isWorse = best !== null && means.get(best)! > means.get(team)! + 1e-9
    return {
      team,
      computed: computed.indexOf(team) + 1,
      cost: isWorse ? { before: best, by: costOf(team, best, { answer, means }) } : null,
    }
  })
}

/** By the common draws, moved to where refined means are. */
function costOf(
  team: string,
  best: string,
  { answer, means }: Pick<OrderNow, 'answer'> & { means: ReadonlyMap<string, number> },
): Believed {
  const { order, gains } = answer.worked
  const of = (which: string) => gains[order.choices.findIndex((choice) => choice.team === which)] as Float64Array
  const [own, other] = [of(team), of(best)]
  const difference = other.map((gain, d) => gain - (own[d] as number))
  const mean = difference.reduce((sum, each) => sum + each, 0) / difference.length
  const shift = means.get(best)! - means.get(team)! - mean
  return believedOf(difference.map((each) => each + shift))
}

/** The order with a team moved by one place. */
export function moved(rows: readonly OwnRow[], team: string, by: -1 | 1): string[] {
  const teams = rows.map((row) => row.team)
  const at = teams.indexOf(team)
  const to = at + by
  if (to < 0 || to >= teams.length) return teams
  return teams.with(at, teams[to]!).with(to, team)
}
