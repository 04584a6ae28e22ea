/** Measured times: which lie far off, and what of them becomes a Duration. */
export { type FarOff, farOff } from './farOff.ts'
export { measured } from './measured.ts'
