/** Long computations that go on while nobody waits: started, followed, cancelled, and kept when they are done. */
export { InProcessJobs } from './inProcess.ts'
export { SharedJobs } from './shared.ts'
export type * from './types.ts'
export { TooManyJobs } from './types.ts'
