// What is known of an event
export { canonicalJson } from './canonical.ts'
export { matchOf, observedTeam, seatOf, slotAt } from './observedTeam.ts'
export * from './people.ts'
export * from './roles.ts'
export * from './types.ts'
