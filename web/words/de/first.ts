import type { FirstWords } from '../catalogue.ts'
import { actions } from './actions.ts'
import { explain } from './explain.ts'
import { format } from './format.ts'
import { refusals } from './refusals.ts'
import { shell } from './shell.ts'
import { start } from './start.ts'
import { units } from './units.ts'
import { verdict } from './verdict.ts'
import { worker } from './worker.ts'

/** What the first page says in German. */
export const first: FirstWords = { actions, explain, format, refusals, shell, start, units, verdict, worker }
