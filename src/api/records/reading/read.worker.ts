// What phones hand in is read here, by a thread of its own: it takes longer than to keep it, and pages are answered meanwhile.
export { readBatch } from './batch.ts'
