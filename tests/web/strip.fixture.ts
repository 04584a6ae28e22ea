import type { LegReport, StageReport } from '../../src/model/leg/types.ts'
import type { StripLeg } from '../../web/charts/stripLayout.ts'

interface Given {
  id: string
  from: number
  takes: number
  float?: number
}

const stage = ({ id, from, takes, float = 0 }: Given): StageReport => ({
  id,
  mean: takes,
  earliestStart: from,
  earliestFinish: from + takes,
  latestStart: from + float,
  latestFinish: from + takes + float,
  float,
  criticality: float === 0 ? 0.9 : 0.1,
})

const report = (mean: number, stages: StageReport[]): LegReport => ({
  mean,
  sd: 0.8,
  p10: mean - 1,
  p50: mean,
  p90: mean + 1,
  distribution: [[mean, 1]],
  drive: stages.length > 0 ? { length: 9, seconds: 4 } : null,
  stages,
})

/**
 * A score leg: drive 4.0 s; lift 1.5 s and spin up 5.0 s meanwhile; aim 0.4 s after drive and lift; fire 0.3 s after
 * aim and spin up. By hand: spin up ends at 5.0, aim at 4.4, fire at 5.3; so spin up and fire are critical, drive and
 * aim have 0.6 s of float, lift has 3.1 s.
 */
export const scoreLeg: StripLeg = {
  id: 'score/gantry/0',
  name: 'Score at Gantry',
  report: report(5.6, [
    stage({ id: 'drive', from: 0, takes: 4, float: 0.6 }),
    stage({ id: 'lift', from: 0, takes: 1.5, float: 3.1 }),
    stage({ id: 'spin', from: 0, takes: 5 }),
    stage({ id: 'aim', from: 4, takes: 0.4, float: 0.6 }),
    stage({ id: 'fire', from: 5, takes: 0.3 }),
  ]),
  stageNames: { lift: 'Lift', spin: 'Spin up', aim: 'Aim', fire: 'Fire' },
  worth: { spin: 0.82, fire: 1.4, lift: 0.02, aim: 0.3 },
}

/** A collect leg: drive 3.0 s, lower 1.0 s meanwhile, grab 1.2 s in place. */
export const collectLeg: StripLeg = {
  id: 'collect/outer',
  name: 'Collect from Outer slipway',
  report: report(4.2, [
    stage({ id: 'drive', from: 0, takes: 3 }),
    stage({ id: 'lower', from: 0, takes: 1, float: 2 }),
    stage({ id: 'grab', from: 3, takes: 1.2 }),
  ]),
  stageNames: { lower: 'Lower', grab: 'Grab' },
  worth: { lower: 0, grab: 1.1 },
}

export const wholeLeg: StripLeg = {
  id: 'finish/davit',
  name: 'To Davit',
  report: report(7.5, []),
  stageNames: {},
  worth: { whole: 0.4 },
}
