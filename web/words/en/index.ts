import { field } from './field.ts'
import { games } from './games.ts'
import { shell } from './shell.ts'
import { units } from './units.ts'

/** The English texts, one file per area of the screens. */
export const en = { field, games, shell, units }
