import { guess } from './guess.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'

/** The English texts, one file per area of the screens. */
export const en = { guess, quickSheet, rulesChange, shell }
