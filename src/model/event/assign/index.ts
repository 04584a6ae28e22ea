export { deal, enoughFor } from './deal.ts'
export type { Breaks } from './stints.ts'
export type * from './types.ts'
