/** Scores of any alliances of an event without simulating each: what is expected of robots, and what simulated matches lay off it. */

export { type PackedRating, packRating, thinnedRating, unpackRating } from './packed.ts'
export { joined, type PlayedField, Playing, type PlayRequest } from './play.ts'
export { commonDraws, ratedFrom, ratedTeam, ratingOf, ratingsOf, robotDraws } from './rated.ts'
export { samplePairings } from './sample.ts'
export { type Lot, Sibling } from './sibling.ts'
export { type Traits, TraitsOf } from './traits.ts'
export type * from './types.ts'
