// Opening and keeping
export { StoreError } from './errors.ts'
export { type OpenOptions, openStore } from './open.ts'
// What is kept
export type * from './types.ts'
