/** Timings from hardware: what each calculator is given, and what it answers. */
export { airAnswer, airRequest } from './air.ts'
export { cylinderAnswer, cylinderRequest } from './cylinder.ts'
export { driveAnswer, driveRequest } from './drive.ts'
export { part } from './parts.ts'
export { pivotAnswer, pivotRequest } from './pivot.ts'
export { rollersAnswer, rollersRequest } from './rollers.ts'
export { shotAnswer, shotRequest } from './shot.ts'
export { wheelAnswer, wheelRequest } from './wheel.ts'
