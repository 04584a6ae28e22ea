export { InProcessLive } from './inProcess.ts'
export type * from './types.ts'
