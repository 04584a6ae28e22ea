import type { Words } from '../catalogue.ts'
import { actions } from './actions.ts'
import { cautions } from './cautions.ts'
import { durations } from './durations.ts'
import { explain } from './explain.ts'
import { field } from './field.ts'
import { format } from './format.ts'
import { games } from './games.ts'
import { guess } from './guess.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'
import { start } from './start.ts'
import { units } from './units.ts'
import { verdict } from './verdict.ts'
import { worker } from './worker.ts'

/** The German texts. */
export const de: Words = {
  actions,
  cautions,
  durations,
  explain,
  field,
  format,
  games,
  guess,
  quickSheet,
  rulesChange,
  shell,
  start,
  units,
  verdict,
  worker,
}
