import { createHash, randomInt } from 'node:crypto'

/** Without vowels, so that no word appears, and without what is taken for something else when it is read aloud. */
const letters = 'BCDFGHJKLMNPQRSTVWXZ23456789'

/** Six characters to be typed on a phone: one of 480 million. */
export const newCode = (): string => Array.from({ length: 6 }, () => letters[randomInt(letters.length)]).join('')

/** What the database keeps of a key: no key can be read from it, and the same key looks different in every round. */
export const hashOf = (code: string, key: string): string => createHash('sha256').update(`${code}:${key}`).digest('hex')
