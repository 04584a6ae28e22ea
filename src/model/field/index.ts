/** Section 2 of the model: where a robot can drive, by which way, and how long that takes. */

// Whether a field can be meant
export { outlineFault, selfCrossing } from './outline.ts'
// Both, between two places of a game
export { type Place, placeOf } from './places.ts'
export { MOST_CORNERS } from './polygon.ts'
// Where a robot can stand, and where it can get
export { keptAway, reachProblems, standing } from './reach.ts'
// Which way
export { fieldRoutes } from './routes.ts'
// How long
export { travelSeconds } from './seconds.ts'
export { obstaclesMapOntoEachOther, obstaclesWithoutPartner, symmetricImage } from './symmetry.ts'
export { travel } from './travel.ts'
export type { ArcSegment, FieldRoutes, LineSegment, Route, Segment } from './types.ts'
