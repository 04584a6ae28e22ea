import type { Words } from '../catalogue.ts'
import { guess } from './guess.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'

/** The German texts. */
export const de: Words = { guess, quickSheet, rulesChange, shell }
