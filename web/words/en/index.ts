import { actions } from './actions.ts'
import { after } from './after.ts'
import { air } from './air.ts'
import { backups } from './backups.ts'
import { board } from './board.ts'
import { briefing } from './briefing.ts'
import { budget } from './budget.ts'
import { cautions } from './cautions.ts'
import { charts } from './charts.ts'
import { codes } from './codes.ts'
import { decisions } from './decisions.ts'
import { designs } from './designs.ts'
import { documents } from './documents.ts'
import { doubts } from './doubts.ts'
import { durations } from './durations.ts'
import { earlier } from './earlier.ts'
import { estimates } from './estimates.ts'
import { event } from './event.ts'
import { exchange } from './exchange.ts'
import { explain } from './explain.ts'
import { explainDesigns } from './explainDesigns.ts'
import { explainNumbers } from './explainNumbers.ts'
import { explainTradeoffs } from './explainTradeoffs.ts'
import { field } from './field.ts'
import { fieldCheck } from './fieldCheck.ts'
import { forecasts } from './forecasts.ts'
import { format } from './format.ts'
import { games } from './games.ts'
import { glossary } from './glossary.ts'
import { guess } from './guess.ts'
import { handin } from './handin.ts'
import { help } from './help.ts'
import { lineup } from './lineup.ts'
import { log } from './log.ts'
import { look } from './look.ts'
import { made } from './made.ts'
import { match } from './match.ts'
import { objective } from './objective.ts'
import { overrides } from './overrides.ts'
import { parts } from './parts.ts'
import { people } from './people.ts'
import { picks } from './picks.ts'
import { pit } from './pit.ts'
import { pitBoard } from './pitBoard.ts'
import { playoffs } from './playoffs.ts'
import { practice } from './practice.ts'
import { problems } from './problems.ts'
import { quickSheet } from './quickSheet.ts'
import { records } from './records.ts'
import { refusals } from './refusals.ts'
import { routines } from './routines.ts'
import { rulesChange } from './rulesChange.ts'
import { search } from './search.ts'
import { seeds } from './seeds.ts'
import { settings } from './settings.ts'
import { sheets } from './sheets.ts'
import { shell } from './shell.ts'
import { shortcuts } from './shortcuts.ts'
import { sideBySide } from './sideBySide.ts'
import { start } from './start.ts'
import { stopwatch } from './stopwatch.ts'
import { strip } from './strip.ts'
import { tables } from './tables.ts'
import { timingCharts } from './timingCharts.ts'
import { timingInputs } from './timingInputs.ts'
import { timingRemarks } from './timingRemarks.ts'
import { timings } from './timings.ts'
import { tradeoffs } from './tradeoffs.ts'
import { trend } from './trend.ts'
import { turns } from './turns.ts'
import { units } from './units.ts'
import { verdict } from './verdict.ts'
import { visits } from './visits.ts'
import { worker } from './worker.ts'

/** The English texts, one file per area of the screens. */
export const en = {
  actions,
  after,
  air,
  backups,
  board,
  briefing,
  budget,
  cautions,
  charts,
  codes,
  decisions,
  designs,
  documents,
  doubts,
  durations,
  earlier,
  estimates,
  event,
  exchange,
  explain,
  explainDesigns,
  explainNumbers,
  explainTradeoffs,
  field,
  fieldCheck,
  forecasts,
  format,
  games,
  glossary,
  guess,
  handin,
  help,
  lineup,
  log,
  look,
  made,
  match,
  objective,
  overrides,
  parts,
  picks,
  pit,
  pitBoard,
  playoffs,
  practice,
  people,
  problems,
  quickSheet,
  records,
  refusals,
  routines,
  rulesChange,
  search,
  seeds,
  settings,
  shell,
  sheets,
  shortcuts,
  sideBySide,
  start,
  stopwatch,
  strip,
  tables,
  timingInputs,
  timingRemarks,
  timings,
  timingCharts,
  tradeoffs,
  trend,
  turns,
  units,
  verdict,
  visits,
  worker,
}
