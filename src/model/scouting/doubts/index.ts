/** Which records to doubt, and why: results against records, goals and robots taken for others, scouts. */

export type { Agreement } from './agreement.ts'
export { type Doubts, doubtsOf } from './doubts.ts'
export type * from './types.ts'
