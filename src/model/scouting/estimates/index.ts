/** What is believed of teams after what was seen. */

export { type DefenceEffect, defenceEffect } from './defence.ts'
export type { TeamDraws } from './draws.ts'
export type { EarlierEstimate, PastEstimate } from './earlier.ts'
export { type EarlierChange, earlierChanges } from './earlierChanges.ts'
export { type EstimateInput, EventEstimates } from './event.ts'
export { type HalfLifeScore, halfLifeScores, halfLives } from './halfLife.ts'
export type { Made, MadeMatch, MadeOfTeam, Running } from './made.ts'
export {
  type Changed,
  changedBy,
  type EarlierEvent,
  type EventInput,
  estimatesOfEvent,
  estimatesOfTeams,
  eventEstimates,
  type HalfLifeEvidence,
  halfLivesOf,
  madeOfEvent,
  matchesBefore,
  sideBySideOf,
  withoutRecords,
} from './ofEvent.ts'
export { worthOf } from './points.ts'
export { claimWeight, defaultDiscount, drawCount, hyperpriors } from './settings.ts'
export { type SideBySide, sideBySide } from './sideBySide.ts'
export * from './types.ts'
export { type EarlierMatch, evenly, type Weighing } from './weights.ts'
