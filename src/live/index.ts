export { LiveBySignals } from './bySignals.ts'
export { type Live, type LiveNews, liveKinds } from './types.ts'
