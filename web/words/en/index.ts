import { budget } from './budget.ts'
import { designs } from './designs.ts'
import { explain } from './explain.ts'
import { field } from './field.ts'
import { games } from './games.ts'
import { guess } from './guess.ts'
import { quickSheet } from './quickSheet.ts'
import { routines } from './routines.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'
import { stopwatch } from './stopwatch.ts'
import { strip } from './strip.ts'
import { units } from './units.ts'
import { worker } from './worker.ts'

/** The English texts, one file per area of the screens. */
export const en = {
  budget,
  designs,
  explain,
  field,
  games,
  guess,
  quickSheet,
  routines,
  rulesChange,
  shell,
  stopwatch,
  strip,
  units,
  worker,
}
