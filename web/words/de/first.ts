import type { FirstWords } from '../catalogue.ts'
import { actions } from './actions.ts'
import { charts } from './charts.ts'
import { explain } from './explain.ts'
import { format } from './format.ts'
import { practice } from './practice.ts'
import { refusals } from './refusals.ts'
import { shell } from './shell.ts'
import { start } from './start.ts'
import { units } from './units.ts'
import { verdict } from './verdict.ts'
import { worker } from './worker.ts'

/** What the first page says in German. */
export const first: FirstWords = {
  actions,
  charts,
  explain,
  format,
  practice,
  refusals,
  shell,
  start,
  units,
  verdict,
  worker,
}
