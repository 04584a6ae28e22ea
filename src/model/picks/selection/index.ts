/** How alliances are formed: captains, turns, who declined, who is free. */
export { allianceOf, bestOf, follow, membersOf, onTurn } from './follow.ts'
export { Selection, selectionAfter } from './selection.ts'
export { turnsOf } from './turns.ts'
export type * from './types.ts'
