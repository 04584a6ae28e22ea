export { InProcessLive } from './inProcess.ts'
export { type Live, type LiveNews, liveKinds } from './types.ts'
