import type { Words } from '../catalogue.ts'
import { field } from './field.ts'
import { games } from './games.ts'
import { shell } from './shell.ts'
import { units } from './units.ts'

/** The German texts. */
export const de: Words = { field, games, shell, units }
