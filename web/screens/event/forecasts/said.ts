import type { Calls } from '../../../../src/model/scouting/record/index.ts'
import type { ForecastRow, SaidBefore } from '../../../data/forecasts.ts'
import { words } from '../../../words/catalogue.ts'
import { percent, plain, points } from '../../../words/format.ts'
import { allianceName } from '../names.ts'

/** Fewer calls than this are told and not judged. */
const few = 10

/** Whom a forecast gave more, and how much: 'Red 62 %'. */
export function callOf({ win, loss }: Pick<SaidBefore, 'win' | 'loss'>): string {
  const red = win >= loss
  return words().forecasts.callOf(allianceName(red ? 'red' : 'blue'), percent(red ? win : loss))
}

/** What came: 'Blue won, 88.0 : 104.0'; why there is nothing to say otherwise. */
export function cameOf({ state, result }: Pick<ForecastRow, 'state' | 'result'>): string {
  const texts = words().forecasts
  const came = result && scoreSaid(result)
  if (state === 'scored') return came ?? ''
  return [came, texts.states[state]].filter(Boolean).join('; ')
}

function scoreSaid({ red, blue }: { red: number; blue: number }): string {
  const texts = words().forecasts
  const [first, second] = [plain(red, 1), plain(blue, 1)]
  return red === blue
    ? texts.tied(first, second)
    : texts.winner(allianceName(red > blue ? 'red' : 'blue'), first, second)
}

export const isHit = ({ win, loss, result }: ForecastRow): boolean =>
  result !== null && Math.sign(result.red - result.blue) === (win >= loss ? 1 : -1)

/** How many calls came true, and whether that is as many as should. */
export interface Trust {
  count: string
  verdict: string
}

function trustSaid({ atLeast, called, came, expected, low, high }: Calls): Trust {
  const texts = words().forecasts
  const count = atLeast === 0 ? texts.calledAll(called, came) : texts.called(called, percent(atLeast), came)
  if (called < few) return { count, verdict: texts.few }
  const verdict = came < low ? 'bold' : came > high ? 'cautious' : 'fits'
  return { count, verdict: `${texts.expected(points(expected), low, high)}, ${texts.verdicts[verdict]}` }
}

/** What to begin with: clear calls where there are enough, then all. */
export function trustOf(calls: readonly Calls[]): Trust[] {
  const told = calls.filter(({ called }) => called > 0)
  const clear = told.find(({ atLeast, called }) => atLeast === 0.7 && called >= few)
  return [...(clear ? [clear] : []), ...told.filter((each) => each !== clear)].map(trustSaid)
}
