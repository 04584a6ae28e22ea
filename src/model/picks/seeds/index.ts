/** Where teams end after the matches to come, and what each of ours is worth. */
export { comingMatches } from './coming.ts'
export { seedsOf } from './seeds.ts'
export { type MatchSpread, matchesEach, spreadsOf } from './spreads.ts'
export type * from './types.ts'
