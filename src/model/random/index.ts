/** Random numbers that are functions of a seed and a name, and sums that keep their digits. */

// Sums
export { Moments } from './moments.ts'
// Numbers
export { philox } from './philox.ts'
export { stratified } from './stratified.ts'
export { compensatedSum } from './sum.ts'
export { type Stream, Uniforms } from './uniforms.ts'
