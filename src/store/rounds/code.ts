import { randomInt } from 'node:crypto'

/** Without vowels, so that no word appears, and without what is taken for something else when it is read aloud. */
const letters = 'BCDFGHJKLMNPQRSTVWXZ23456789'

/** Six characters to be typed on a phone: one of 480 million. */
export const newCode = (): string => Array.from({ length: 6 }, () => letters[randomInt(letters.length)]).join('')
