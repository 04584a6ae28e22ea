import type { Words } from '../catalogue.ts'
import { explain } from './explain.ts'
import { guess } from './guess.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'
import { worker } from './worker.ts'

/** The German texts. */
export const de: Words = { explain, guess, quickSheet, rulesChange, shell, worker }
