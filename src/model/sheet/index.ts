/** The first Saturday: ways to play with one number per leg, ranked by the exact plan. */

// From a way to documents of the model, and back to points
export { designOf, optionOf } from './grow.ts'
export { onePerPlace } from './onePerPlace.ts'
export { changes, order, type Ranked } from './order.ts'
// From guesses of many people to one range
export { type Guess, type Pooled, pool, quantile } from './pool.ts'
export { type WayResult, wayResult } from './result.ts'
export { atStrength, strengthNames, strengthsAtFirst } from './strength.ts'
