import type { Words } from '../catalogue.ts'
import { field } from './field.ts'
import { shell } from './shell.ts'
import { units } from './units.ts'

/** The German texts. */
export const de: Words = { field, shell, units }
