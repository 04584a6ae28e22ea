import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Game, Option } from '../../src/model/documents/types.ts'
import type { LegRequest } from '../../src/model/leg/types.ts'
import type { Action, Band, LeaveBy, PlanNode } from '../../src/model/plan/types.ts'
import { projectRoot } from '../../src/root.ts'

/** Rows of the independently computed answers; tests/reference/README.md says how they came about and how near is near enough. */
export interface LegRow {
  option: string
  leg: LegRequest
  mean: number
  sd: number
  p10Range: [number, number]
  p50Range: [number, number]
  p90Range: [number, number]
  pieces?: { mean: number }[]
  stages?: {
    id: string
    mean: number
    earliestStart: number
    earliestFinish: number
    latestStart: number
    latestFinish: number
    float: number
    criticality: number
  }[]
  distribution?: [number, number][]
}

export interface PlanRow {
  option: string
  expected: {
    total: number
    autonomous: number
    adjust: number
    goals: { [id: string]: { pieces: number; points: number } }
    finishes: { [id: string]: { attempts: number; points: number } }
  }
  sd: number
  step: number
  p10Range: [number, number]
  p50Range: [number, number]
  p90Range: [number, number]
  distribution: [number, number][]
  pieces: { [goal: string]: [number, number][] }
  policy: { node: PlanNode; bands: Band[]; firm: Band[] }[]
  leaveBy: (LeaveBy & { fromRange: [number, number]; latestRange: [number, number]; forgoneRange: [number, number] })[]
  call: { at: number; points: number; early3: number; late3: number; nearby: [number, number][] } | null
  first: { action: Action; value: number }[]
  worth?: { leg: unknown; stage: string; pointsPerSecond: number }[]
}

const read = (name: string) => JSON.parse(readFileSync(join(projectRoot(), 'tests/reference', name), 'utf8'))
const inputs = read('reference-breakwater.json') as { game: Game; options: Option[] }
const expected = read('reference-breakwater.expected.json') as { legs: LegRow[]; plans: PlanRow[] }

export const game = inputs.game
export const legRows = expected.legs
export const planRows = expected.plans

export function optionNamed(id: string): Option {
  const option = inputs.options.find((other) => other.id === id)
  if (!option) throw new Error(`the reference has no option ${id}`)
  return option
}

/** Greatest difference of two cumulative distributions, given as [value, probability] rising. */
export function cumulativeDistance(a: readonly [number, number][], b: readonly [number, number][]): number {
  const steps = [...a.map(([x, p]) => ({ x, p })), ...b.map(([x, p]) => ({ x, p: -p }))].sort(
    (one, other) => one.x - other.x,
  )
  let sum = 0
  let most = 0
  for (const [i, { x, p }] of steps.entries()) {
    sum += p
    const next = steps[i + 1]
    if (!next || next.x - x > 1e-6) most = Math.max(most, Math.abs(sum))
  }
  return most
}
