/** Records as codes for a camera: where there is no network, a finished record is one picture, and several are a few. */

// Sums and letters
export { fromBase45, toBase45 } from './base45.ts'
// Bytes as frames, and back
export { type Collected, Collector } from './collector.ts'
export { crc32 } from './crc32.ts'
// Records as bytes, and back
export { CodeError, type CodeFailure } from './failure.ts'
export { frameBytes, framesOf, type Sequence, stillFrame } from './frame.ts'
export { type IdTable, idTable, noTable } from './ids.ts'
export { type Message, messageOf, readMessage } from './message.ts'
export { packRow, peekRow, unpackRow } from './row.ts'
