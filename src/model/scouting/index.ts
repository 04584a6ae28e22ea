// What is known of an event
export { type Arrived, arrivals, type MatchArrivals, type SeatArrivals, type SeatState } from './arrived.ts'
export { canonicalJson } from './canonical.ts'
export { type Bounds, type Contradiction, contradictions, scoredIn, type Watched } from './contradictions.ts'
export { currentRecords, type Replacing } from './current.ts'
export { matchOf, observedTeam } from './observedTeam.ts'
export * from './people.ts'
export * from './roles.ts'
export * from './types.ts'
