import type { Words } from '../catalogue.ts'
import { shell } from './shell.ts'

/** The German texts. */
export const de: Words = { shell }
