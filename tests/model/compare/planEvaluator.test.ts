import { expect, it } from 'vitest'
import { pilotValues } from '../../../src/model/compare/beliefDraws.ts'
import { beliefSize, beliefValues } from '../../../src/model/compare/hypercubes.ts'
import { PlanEvaluator } from '../../../src/model/compare/planEvaluator.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import { documentsOf } from './reference.ts'

const inputs: Input[] = [
  { id: 'hang', paths: ['/options/0/robot/finish/davit/success'], as: 'value', low: 0, likely: 0.6, high: 1 },
  { id: 'pier', paths: ['/options/0/robot/score/pier/0/success'], as: 'value', low: 0.1, likely: 0.9, high: 1 },
  {
    id: 'grab',
    paths: ['/options/1/robot/collect/slipway/stages/1/duration'],
    as: 'factor',
    low: 0.6,
    likely: 1,
    high: 3,
  },
]
const request = { ...documentsOf('gannet-best', 'cormorant-best'), inputs }
const coarse = { step: 0.25, form: false } as const
const rows = beliefValues(inputs, { seed: 3, from: 0, to: beliefSize })

it('loses next to nothing by keeping to the legs that the pilot plans begin, where inputs turn the policy over', () => {
  const all = new PlanEvaluator(request)
  const kept = new PlanEvaluator(request)
  let ticks = 0
  const pilots = pilotValues({ inputs, seed: 3 })
  kept.keepToUsed(pilots, () => ticks++)
  expect(ticks).toBe(pilots.length)
  for (const row of rows.filter((_, draw) => draw % 50 === 0)) {
    const [full, part] = [all.values(row, coarse), kept.values(row, coarse)]
    full.forEach((points, option) => {
      expect(part[option]!).toBeLessThanOrEqual(points + 1e-9)
      expect(points - part[option]!).toBeLessThan(1e-3)
    })
  }
}, 120_000)

it('keeps to those legs indeed: without any pilot there is nothing to do', () => {
  const none = new PlanEvaluator(request)
  none.keepToUsed([], () => {})
  const autonomous = none.values(rows[0]!, coarse)
  const all = new PlanEvaluator(request).values(rows[0]!, coarse)
  autonomous.forEach((points, option) => void expect(points).toBeLessThan(all[option]! / 2))
  expect(none.values(rows[0]!, { step: 0.1, form: false })[0]).toBeGreaterThan(autonomous[0]! * 2)
}, 60_000)

it('has no pilot among the draws that are repeated on 0.1 s, which judge what was left out', () => {
  const repeated = new Set(rows.filter((_, draw) => draw % 40 === 0).map((row) => row.join()))
  expect(pilotValues({ inputs, seed: 3 }).filter((row) => repeated.has(row.join()))).toEqual([])
})
