// Opening and keeping
export { StoreError } from './errors.ts'
export { type OpenOptions, openStore } from './open.ts'
// Rounds of guesses
export { mostCorrections, mostDevices, mostRounds } from './rounds/types.ts'
// What is kept
export type * from './types.ts'
