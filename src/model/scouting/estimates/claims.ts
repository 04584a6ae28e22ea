import type { PitVisit } from '../types.ts'
import type { RateData } from './rates.ts'
import { claimWeight } from './settings.ts'
import type { Measures } from './teamData.ts'

/** Claims, which add to what is seen and say nothing about the event. */
export interface ClaimedData {
  claimed: RateData
  claimedGoals: Float64Array
  claimedFinish: Float64Array
  claimedCycle: number | null
}

/** Claims as at most half a match. */
export function claimsOf(
  claims: PitVisit['claims'] | undefined,
  { goals, finishes, dispersion, perTrip, ofGoals }: Measures,
): ClaimedData {
  const claimedGoals = new Float64Array(goals.length)
  const claimedFinish = new Float64Array(finishes.length)
  const pieces = goals.map((goal) => claims?.goals?.[goal] ?? 0)
  const all = pieces.reduce((sum, n) => sum + n, 0)
  if (claims?.goals) for (const [k, n] of pieces.entries()) claimedGoals[k] = (claimWeight * n) / perTrip / ofGoals
  const finish = claims?.finish === undefined ? -1 : finishes.indexOf(claims.finish)
  if (finish >= 0) claimedFinish[finish] = claimWeight
  const claimed = claims?.goals
    ? { count: (claimWeight * all) / dispersion, exposure: claimWeight / dispersion }
    : { count: 0, exposure: 0 }
  return { claimed, claimedGoals, claimedFinish, claimedCycle: claims?.cycle ?? null }
}
