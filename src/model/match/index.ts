/** Section 5 of the model: three against three. */

// Single matches to look at
export { type Film, filmOf } from './film.ts'
// One set-up, many times
export { simulate } from './run.ts'
export { sampleMatches } from './timeline.ts'
// What can be asked and what is answered
export type * from './types.ts'
