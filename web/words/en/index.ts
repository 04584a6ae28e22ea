import { shell } from './shell.ts'

/** The English texts, one file per area of the screens. */
export const en = { shell }
