/** Section 5 of the model, line-ups: which of our robots does what. */
export { lineup } from './alone.ts'
export { candidatesFor } from './candidates.ts'
export { LineupPlayer, LineupPlayers, type PlayedLineup } from './player.ts'
export { type LineupSearch, matchesOf, type PlayLineups, searchLineups } from './search.ts'
export type * from './types.ts'
