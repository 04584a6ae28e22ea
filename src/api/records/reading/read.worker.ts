import { readShared } from './batch.ts'

// What phones hand in is read here, by a thread of its own: it takes longer than to keep it, and pages are answered meanwhile.
export const readBatch = (bytes: Uint8Array) =>
  readShared(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString())
