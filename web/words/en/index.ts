import { charts } from './charts.ts'
import { explain } from './explain.ts'
import { explainTradeoffs } from './explainTradeoffs.ts'
import { field } from './field.ts'
import { games } from './games.ts'
import { guess } from './guess.ts'
import { practice } from './practice.ts'
import { quickSheet } from './quickSheet.ts'
import { rulesChange } from './rulesChange.ts'
import { shell } from './shell.ts'
import { tradeoffs } from './tradeoffs.ts'
import { turns } from './turns.ts'
import { units } from './units.ts'
import { worker } from './worker.ts'

/** The English texts, one file per area of the screens. */
export const en = {
  charts,
  explain,
  explainTradeoffs,
  field,
  games,
  guess,
  practice,
  quickSheet,
  rulesChange,
  shell,
  tradeoffs,
  turns,
  units,
  worker,
}
