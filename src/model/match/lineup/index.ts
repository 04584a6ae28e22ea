/** Section 5 of the model, line-ups: which of our robots does what. */
export { candidatesFor } from './candidates.ts'
export { LineupPlayer, LineupPlayers, type PlayedLineup } from './player.ts'
export { lineup, type PlayLineups, searchLineups } from './search.ts'
export type * from './types.ts'
