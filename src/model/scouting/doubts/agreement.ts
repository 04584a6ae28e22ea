import { kappa, krippendorff } from '../statistics/index.ts'
import { groupsOf } from './groups.ts'
import type { OneRecord } from './sides.ts'

export interface Agreement {
  /** Krippendorff's α of pieces by goal, and of finishes; null where no robot was watched twice or all say the same. */
  goals: { goal: string; alpha: number | null }[]
  finishes: number | null
  /** Cohen's κ of finishes for two scouts who watched ten robots or more together. */
  pairs: { scouts: [string, string]; shared: number; kappa: number }[]
}

const leastShared = 10

/** How well scouts agree who watched the same robot in the same match. */
export function agreementOf(records: readonly OneRecord[], goals: readonly string[]): Agreement {
  const robots = [...groupsOf(records, ({ match, team }) => `${match} ${team}`).values()].filter(
    (own) => own.length > 1,
  )
  const finishes = [...new Set(records.flatMap(({ finish }) => (finish === undefined ? [] : [finish ?? ''])))].sort()
  const said = (record: OneRecord) => (record.finish === undefined ? [] : [finishes.indexOf(record.finish ?? '')])
  const tables = new Map<string, { scouts: [string, string]; table: number[][] }>()
  for (const own of robots)
    for (const [i, one] of own.entries())
      for (const other of own.slice(i + 1)) {
        const [a, b] = one.scout < other.scout ? [one, other] : [other, one]
        const [x] = said(a)
        const [y] = said(b)
        if (a.scout === b.scout || x === undefined || y === undefined) continue
        const key = JSON.stringify([a.scout, b.scout])
        const found = tables.get(key) ?? {
          scouts: [a.scout, b.scout],
          table: finishes.map(() => finishes.map(() => 0)),
        }
        found.table[x]![y]!++
        tables.set(key, found)
      }
  const pairs = [...tables.values()].flatMap(({ scouts, table }) => {
    const shared = table.flat().reduce((sum, n) => sum + n, 0)
    const found = shared < leastShared ? Number.NaN : kappa(table).kappa
    return Number.isFinite(found) ? [{ scouts, shared, kappa: found }] : []
  })
  return {
    goals: goals.map((goal, k) => ({
      goal,
      alpha: krippendorff(
        robots.map((own) => own.flatMap(({ pieces }) => (pieces ? [pieces[k] as number] : []))),
        'interval',
      ),
    })),
    finishes: krippendorff(
      robots.map((own) => own.flatMap(said)),
      'nominal',
    ),
    pairs: pairs.sort((a, b) => (a.scouts.join() < b.scouts.join() ? -1 : 1)),
  }
}
