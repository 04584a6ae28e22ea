import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { simulate } from '../../../src/model/match/index.ts'
import type { Both, Chance, Estimated, MatchReport, Measured } from '../../../src/model/match/types.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game, optionNamed } from '../reference.ts'

type Robot = MatchReport['robots'][number] & { option: string }
type Row = Omit<MatchReport, 'robots' | 'distributions' | 'finishPoints' | 'seed'> & {
  lineup: string
  ours: string[]
  theirs: string[]
  robots: Robot[]
}

/** Independently computed (tests/reference, which says how): three line-ups, about 70 means each. */
const { matches: rows } = JSON.parse(
  readFileSync(new URL('../../reference/reference-breakwater.match.expected.json', import.meta.url), 'utf8'),
) as { matches: Row[] }

/** The tolerance follows from the number of matches: 4 combined standard errors. */
const replicates = inLongForm ? 200_000 : 20_000

/** How far the means of a report lie from the reference's, in combined standard errors. */
class Distances {
  readonly list: { what: string; z: number }[] = []
  private readonly row: Row

  constructor(row: Row) {
    this.row = row
  }

  measured(what: string, own: Measured, wanted: Measured): void {
    // A number that never varies must be met but for rounding.
    const error = wanted.sd * Math.sqrt(1 / replicates + 1 / this.row.replicates)
    const off = own.mean - wanted.mean
    this.list.push({ what, z: error > 0 ? off / error : Math.abs(off) < 1e-9 ? 0 : Number.POSITIVE_INFINITY })
  }

  chance(what: string, own: Chance, { probability: p }: Chance): void {
    this.measured(
      what,
      { mean: own.probability, sd: 0, standardError: 0 },
      { mean: p, sd: Math.sqrt(p * (1 - p)), standardError: 0 },
    )
  }

  estimated(what: string, own: Estimated, wanted: Estimated): void {
    this.list.push({ what, z: (own.value - wanted.value) / Math.hypot(own.standardError, wanted.standardError) })
  }

  both<T>(each: (what: string, own: T, wanted: T) => void, what: string, own: Both<T>, wanted: Both<T>): void {
    for (const side of ['ours', 'theirs'] as const) each.call(this, `${what} of ${side}`, own[side], wanted[side])
  }
}

function distances(row: Row, report: MatchReport): Distances {
  const out = new Distances(row)
  for (const key of ['score', 'rankingPoints', 'autoPoints'] as const)
    out.both(out.measured, key, report[key], row[key])
  out.measured('margin', report.margin, row.margin)
  for (const key of ['win', 'tie', 'loss'] as const) out.chance(key, report[key], row[key])
  for (const [id, wanted] of Object.entries(row.bonuses)) out.both(out.chance, id, report.bonuses[id]!, wanted)
  for (const [id, wanted] of Object.entries(row.heldSeconds))
    out.both(out.measured, `held ${id}`, report.heldSeconds[id]!, wanted)
  for (const [id, wanted] of Object.entries(row.heldSecondsPerPiece))
    for (const kind of ['average', 'marginal'] as const)
      for (const side of ['ours', 'theirs'] as const)
        out.estimated(`${kind} ${id} of ${side}`, report.heldSecondsPerPiece[id]![side][kind], wanted[side][kind])
  for (const [i, wanted] of row.robots.entries()) {
    const own = report.robots[i]!
    out.measured(`points of robot ${i}`, own.points, wanted.points)
    out.measured(`marking of robot ${i}`, own.defending, wanted.defending)
    for (const key of ['pieces', 'finishes', 'waiting'] as const)
      for (const [id, value] of Object.entries(wanted[key]))
        out.measured(`${key} ${id} of robot ${i}`, own[key][id]!, value)
  }
  return out
}

describe('the match against an independent program', () => {
  it.each(rows)(
    'line-up $lineup: every mean within 4 combined standard errors, and together as far off as chance is',
    { timeout: 600_000 },
    (row) => {
      const report = simulate({
        game,
        ours: row.ours.map(optionNamed),
        theirs: row.theirs.map(optionNamed),
        replicates,
        seed: 20_260 + rows.indexOf(row),
        checked: true,
      })
      const { list } = distances(row, report)
      expect(list.length).toBeGreaterThan(70)
      expect(list.filter(({ z }) => !(Math.abs(z) <= 4))).toEqual([])
      // Many means hang together, so that their mean square scatters far more than if they did not.
      expect(Math.sqrt(list.reduce((sum, { z }) => sum + z * z, 0) / list.length)).toBeLessThan(1.6)
    },
  )
})
