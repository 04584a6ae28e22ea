/** A whole event as one file: what is in it, and what bringing it in changes. */
export { apartKey, type BringPlan, type Here, planBring } from './plan.ts'
export { type ExchangeSaid, exchangeSentences, tellExchange } from './sentences.ts'
export * from './types.ts'
