/** An event as tables, and back. */

// Cells of a file
export { readCell, writeCell } from './cells.ts'
// Tables and their columns
export { eventTables } from './eventTables.ts'
// Out and in
export { problemAt } from './lines.ts'
export { packageOf } from './package.ts'
export { type ReadTables, readTables } from './read.ts'
export { listTables, recordTables } from './recordTables.ts'
export type * from './types.ts'
export { tablesOf } from './write.ts'
