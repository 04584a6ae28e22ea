/** What teams bring, solved from what alliances came to. */

export { type Category, categories, pointsIn, solvedByCategory, totalsOf } from './categories.ts'
export { MixedModel } from './mixed.ts'
export { type Solved, type SolvedTeam, solveTotals, type Total } from './solve.ts'
