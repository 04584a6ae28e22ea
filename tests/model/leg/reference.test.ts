import { describe, expect, it } from 'vitest'
import { legReport } from '../../../src/model/leg/index.ts'
import type { LegReport } from '../../../src/model/leg/types.ts'
import { cumulativeDistance, game, type LegRow, legRows, optionNamed } from '../reference.ts'

// Source of every value here: the independently computed reference case (tests/reference), tolerances as stated there.
const near = (a: number, b: number, tolerance: number) => Math.abs(a - b) <= tolerance
const isPointMass = (row: LegRow) => row.sd < 5.5e-3

function faults(row: LegRow, report: LegReport): string[] {
  const out: string[] = []
  const check = (what: string, ok: boolean) => {
    if (!ok) out.push(what)
  }
  check(`mean ${report.mean} for ${row.mean}`, near(report.mean, row.mean, 2e-3))
  check(`sd ${report.sd} for ${row.sd}`, near(report.sd, row.sd, 2e-3) || (isPointMass(row) && report.sd <= 5.5e-3))
  for (const p of ['p10', 'p50', 'p90'] as const) {
    const [low, high] = row[`${p}Range`]
    check(`${p} ${report[p]} in ${low}…${high}`, report[p] >= low - 0.1 && report[p] <= high + 0.1)
  }
  check('number of pieces', (row.pieces?.length ?? 0) === (row.pieces ? (report.pieces?.length ?? 0) : 0))
  for (const [i, piece] of (row.pieces ?? []).entries())
    check(`piece ${i + 1}`, near(report.pieces?.[i]?.mean ?? Number.NaN, piece.mean, 2e-3))
  for (const stage of row.stages ?? []) {
    const own = report.stages.find((other) => other.id === stage.id)
    for (const key of ['mean', 'earliestStart', 'earliestFinish', 'latestStart', 'latestFinish', 'float'] as const)
      check(`${key} of ${stage.id}`, near(own?.[key] ?? Number.NaN, stage[key], 2e-3))
    check(`criticality of ${stage.id}`, near(own?.criticality ?? Number.NaN, stage.criticality, 0.02))
  }
  if (row.distribution) check('distribution', cumulativeDistance(report.distribution, row.distribution) <= 0.005)
  return out
}

describe('every leg of the reference case', () => {
  const options = [...new Set(legRows.map((row) => row.option))]
  it.each(options)('is met for %s', (option) => {
    const wrong = legRows
      .filter((row) => row.option === option)
      .flatMap((row) =>
        faults(row, legReport(game, optionNamed(option).robot, row.leg)).map(
          (fault) => `${JSON.stringify(row.leg)}: ${fault}`,
        ),
      )
    expect(wrong).toEqual([])
  })
})
