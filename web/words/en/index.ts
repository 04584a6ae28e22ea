import { explain } from './explain.ts'
import { guess } from './guess.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'
import { worker } from './worker.ts'

/** The English texts, one file per area of the screens. */
export const en = { explain, guess, quickSheet, rulesChange, shell, worker }
