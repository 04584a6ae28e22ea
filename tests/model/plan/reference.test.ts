import { describe, expect, it } from 'vitest'
import { Planner } from '../../../src/model/plan/index.ts'
import type { PlanReport } from '../../../src/model/plan/types.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { cumulativeDistance, game, optionNamed, type PlanRow, planRows } from '../reference.ts'

// Source of every value here: the independently computed reference case (tests/reference), tolerances as stated there.
const value = 5e-3
const key = (thing: unknown) =>
  JSON.stringify(thing, (_, v) =>
    v && typeof v === 'object' && !Array.isArray(v) ? Object.fromEntries(Object.entries(v).sort()) : v,
  )

class Faults {
  readonly list: string[] = []
  near(what: string, own: number | undefined, wanted: number, tolerance: number): void {
    if (own === undefined || !(Math.abs(own - wanted) <= tolerance)) this.list.push(`${what}: ${own} for ${wanted}`)
  }
  within(what: string, own: number | undefined, [low, high]: [number, number], widened: number): void {
    if (own === undefined || own < low - widened - 1e-9 || own > high + widened + 1e-9)
      this.list.push(`${what}: ${own} in ${low}…${high}`)
  }
}

function expectedFaults(row: PlanRow, report: PlanReport, out: Faults): void {
  for (const part of ['total', 'autonomous', 'adjust'] as const)
    out.near(part, report.expected[part], row.expected[part], value)
  for (const [goal, wanted] of Object.entries(row.expected.goals)) {
    // The reference lists goals that the robot can not score on, too; they earn nothing.
    const own = report.expected.goals[goal] ?? { pieces: 0, points: 0 }
    out.near(`pieces on ${goal}`, own.pieces, wanted.pieces, value)
    out.near(`points on ${goal}`, own.points, wanted.points, value)
  }
  for (const [finish, wanted] of Object.entries(row.expected.finishes)) {
    const own = report.expected.finishes[finish] ?? { attempts: 0, points: 0 }
    out.near(`attempts at ${finish}`, own.attempts, wanted.attempts, value)
    out.near(`points of ${finish}`, own.points, wanted.points, value)
  }
  out.near('sd', report.sd, row.sd, 1e-2)
  for (const p of ['p10', 'p50', 'p90'] as const) out.within(p, report[p], row[`${p}Range`], row.step)
  out.near('distribution', cumulativeDistance(report.distribution, row.distribution), 0, 0.005)
  for (const [goal, wanted] of Object.entries(row.pieces))
    out.near(`pieces of ${goal}`, cumulativeDistance(report.pieces[goal] ?? [[0, 1]], wanted), 0, 0.005)
  out.near('number of first actions', report.first.length, row.first.length, 0)
  for (const { action, value: wanted } of row.first)
    out.near(key(action), report.first.find((other) => key(other.action) === key(action))?.value, wanted, value)
}

function policyFaults(row: PlanRow, report: PlanReport, out: Faults): void {
  for (const { node, firm } of row.policy) {
    const own = report.policy.find((other) => key(other.node) === key(node))
    for (const band of firm)
      for (const t of [band.from - 0.1, (band.from + band.to) / 2, band.to + 0.1]) {
        if (t > band.from - 0.1 + 1e-9 || t < band.to + 0.1 - 1e-9) continue
        const action = own?.bands.find(
          (other) => t >= other.to - 1e-6 && (t < other.from - 1e-6 || other === own.bands[0]),
        )?.action
        if (key(action) !== key(band.action))
          out.list.push(`${key(node)} at ${t}: ${key(action)} for ${key(band.action)}`)
      }
  }
  out.near('number of leave-by times', report.leaveBy.length, row.leaveBy.length, 0)
  for (const wanted of row.leaveBy) {
    const own = report.leaveBy.find((other) => key(other.node) === key(wanted.node))
    if (own?.finish !== wanted.finish) out.list.push(`finish of ${key(wanted.node)}: ${own?.finish}`)
    out.within(`from of ${key(wanted.node)}`, own?.from, wanted.fromRange, 0.1)
    out.within(`latest of ${key(wanted.node)}`, own?.latest, wanted.latestRange, 0.1)
    out.within(`forgone of ${key(wanted.node)}`, own?.forgone, wanted.forgoneRange, value)
  }
}

function callFaults(row: PlanRow, report: PlanReport, out: Faults): void {
  if (!row.call) {
    if (report.call !== null) out.list.push('a call where there is none')
    return
  }
  const own = report.call
  const sameTime = own && Math.abs(own.at - row.call.at) < 0.05
  const asGood = row.call.nearby.find(([at]) => own && Math.abs(at - own.at) < 0.05)
  if (!own || !(Math.abs(own.at - row.call.at) <= 0.3 + 1e-9 || (asGood && asGood[1] >= row.call.points - value)))
    out.list.push(`call at ${own?.at} for ${row.call.at}`)
  out.near('points of the call', own?.points, row.call.points, value)
  if (sameTime) {
    out.near('3 s early', own.early3, row.call.early3, value)
    out.near('3 s late', own.late3, row.call.late3, value)
  }
}

/** Another robot's plan of a kind that a plan below is of too: without its finish, or leaving for it at one time. */
const again = ['cormorant-skip', 'petrel-skip', 'cormorant-always', 'petrel-always']

describe('every plan of the reference case', () => {
  it.each(planRows.filter(({ option }) => inLongForm || !again.includes(option)))(
    'is met for $option',
    (row) => {
      const report = new Planner(game).report(optionNamed(row.option), {
        with: row.worth ? ['call', 'worth'] : ['call'],
      })
      const out = new Faults()
      expectedFaults(row, report, out)
      policyFaults(row, report, out)
      callFaults(row, report, out)
      for (const wanted of row.worth ?? []) {
        const own = report.worth?.find((other) => key(other.leg) === key(wanted.leg) && other.stage === wanted.stage)
        out.near(
          `worth of ${key(wanted.leg)} ${wanted.stage}`,
          own?.pointsPerSecond,
          wanted.pointsPerSecond,
          0.02 + 0.02 * Math.abs(wanted.pointsPerSecond),
        )
      }
      expect(out.list).toEqual([])
    },
    120_000,
  )
})
