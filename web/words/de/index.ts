import type { Words } from '../catalogue.ts'
import { decisions } from './decisions.ts'
import { documents } from './documents.ts'
import { explain } from './explain.ts'
import { field } from './field.ts'
import { games } from './games.ts'
import { guess } from './guess.ts'
import { overrides } from './overrides.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'
import { tables } from './tables.ts'
import { units } from './units.ts'
import { worker } from './worker.ts'

/** The German texts. */
export const de: Words = {
  decisions,
  documents,
  explain,
  field,
  games,
  guess,
  overrides,
  quickSheet,
  rulesChange,
  shell,
  tables,
  units,
  worker,
}
