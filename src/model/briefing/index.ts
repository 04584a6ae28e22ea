/** Section 8 of the model, briefing: all that is said minutes before a match, and who is told what of it. */
export { briefAlone } from './alone.ts'
export { brief, type Hands, steps } from './brief.ts'
export { type Change, changesBetween } from './changed.ts'
export * from './copies.ts'
export { type LaneRequest, lanesOf } from './lanes.ts'
export { VersionPlayer, VersionPlayers } from './player.ts'
export type * from './types.ts'
