/** Section 5 of the model: three against three. */

// One set-up, many times
export { simulate } from './run.ts'
// Single matches to look at
export { sampleMatches } from './timeline.ts'
// What can be asked and what is answered
export type * from './types.ts'
