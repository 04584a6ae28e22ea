/** Section 4 of the model, 'Comparing options': which is better, how sure that is, and what would change it. */

// One unknown number in the documents
export { applyInput, type Documents } from './apply.ts'
// The same with what belief says, in one go or in parts for several workers
export { belief, beliefDraws, beliefNeedsFineGrid, beliefSummary, compare } from './belief.ts'
export type { BeliefPart, Step } from './beliefDraws.ts'
// Which is better, and where that changes
export { breakEven, type MapMaker, mapMaker, sideBySide, swing, turn } from './compare.ts'
// Points of single matches, side by side
export { chanceToReach, differenceOf } from './difference.ts'
export { beliefSize } from './hypercubes.ts'
export { inputBelief } from './inputBelief.ts'
export type { MapAxes, MapPoint } from './map.ts'
// What one more piece is worth
export { type PieceWorth, pieceWorth } from './pieceWorth.ts'
export type { Turn } from './turn.ts'
export type * from './types.ts'
// Progress and stopping
export { Cancelled, type Watch } from './watch.ts'
