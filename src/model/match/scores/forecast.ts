import type { Ranking } from '../../documents/types.ts'
import { outcome, ScoreSpread } from './spread.ts'
import type { Calibration, MatchForecast, Records } from './types.ts'

/** What one alliance gets for a lead, apart from its bonuses. */
export const paidFor = ({ win, tie, loss }: Ranking, lead: number): number => {
  const sign = outcome(lead)
  return sign > 0 ? win : sign < 0 ? loss : tie
}

/** Chances, scores and ranking points of a match: over all draws, each over all records near it, so that no luck is added. */
export function forecastOf(ranking: Ranking, id: string, calibration: Calibration): MatchForecast {
  const spread = new ScoreSpread(calibration)
  const { oursExtra, theirsExtra } = spread.records
  const replicates = oursExtra.length
  const sum = { win: 0, tie: 0, ours: 0, oursSquare: 0, theirs: 0, theirsSquare: 0, oursPaid: 0, theirsPaid: 0 }
  let weights = 0
  for (let draw = 0; draw < spread.draws; draw++) {
    let count = 0
    spread.each(draw, () => count++)
    const weight = 1 / (count * spread.draws)
    spread.each(draw, (record) => {
      const [ours, theirs] = [spread.ours(record, draw), spread.theirs(record, draw)]
      const sign = outcome(ours - theirs)
      weights += weight
      sum.win += sign > 0 ? weight : 0
      sum.tie += sign === 0 ? weight : 0
      sum.ours += weight * ours
      sum.oursSquare += weight * ours * ours
      sum.theirs += weight * theirs
      sum.theirsSquare += weight * theirs * theirs
      sum.oursPaid += weight * (paidFor(ranking, ours - theirs) + (oursExtra[record] as number))
      sum.theirsPaid += weight * (paidFor(ranking, theirs - ours) + (theirsExtra[record] as number))
    })
  }
  const [win, tie] = [sum.win / weights, sum.tie / weights]
  const sd = (square: number, mean: number) => Math.sqrt(Math.max(0, square - mean * mean))
  return {
    id,
    replicates,
    score: {
      ours: { mean: sum.ours, sd: sd(sum.oursSquare, sum.ours) },
      theirs: { mean: sum.theirs, sd: sd(sum.theirsSquare, sum.theirs) },
    },
    win,
    tie,
    loss: Math.max(0, 1 - win - tie),
    standardError: Math.sqrt(countingVariance(win + tie / 2, replicates)),
    rankingPoints: { ours: sum.oursPaid, theirs: sum.theirsPaid },
  }
}

/** Of a counted share: two more of each kind, so that an error is never 0 (Agresti & Coull 1998). */
function countingVariance(share: number, count: number): number {
  const near = (share * count + 2) / (count + 4)
  return (near * (1 - near)) / (count + 4)
}

/**
 * How far chances are off, estimated by holding half of the simulated matches out: what one half says through its lines and
 * neighbours against what the other half simply counted. What is left beside the luck of both halves is the structure's.
 */
export function heldOutError(
  ranking: Ranking,
  calibrations: readonly Calibration[],
): { total: number; structure: number } {
  let [gap, luck, own] = [0, 0, 0]
  for (const calibration of calibrations) {
    const [even, odd] = [halfOf(calibration, 0), halfOf(calibration, 1)]
    for (const [one, other] of [[even, odd] as const, [odd, even] as const]) {
      const said = forecastOf(ranking, '', one)
      const counted = countedIn(other.records)
      gap += (said.win + said.tie / 2 - counted) ** 2 / 2
      luck += countingVariance(counted, one.records.ours.length) + countingVariance(counted, other.records.ours.length)
    }
    const all = calibration.records.ours.length
    own += countingVariance(countedIn(calibration.records), all)
  }
  const n = Math.max(1, calibrations.length)
  const structure = Math.max(0, gap - luck / 2) / n
  return { total: Math.sqrt(structure + own / n), structure: Math.sqrt(structure) }
}

function countedIn({ ours, theirs }: Records): number {
  return ours.reduce((sum, score, k) => sum + (outcome(score - (theirs[k] as number)) + 1) / 2, 0) / ours.length
}

/** Every second record of each draw. */
function halfOf({ records, expected }: Calibration, half: 0 | 1): Calibration {
  const { draw, ours, theirs, oursExtra, theirsExtra } = records
  const draws = expected.ours.length
  const kept = (_: number, record: number) => Math.floor(record / draws) % 2 === half
  return {
    expected,
    records: {
      draw: draw.filter(kept),
      ours: ours.filter(kept),
      theirs: theirs.filter(kept),
      oursExtra: oursExtra.filter(kept),
      theirsExtra: theirsExtra.filter(kept),
    },
  }
}
