import type { Words } from '../catalogue.ts'
import { shell } from './shell.ts'
import { units } from './units.ts'

/** The German texts. */
export const de: Words = { shell, units }
