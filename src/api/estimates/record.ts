import {
  type Counting,
  centralInterval,
  type Histogram,
  type KeptForecast,
  meanOfHistogram,
  recordOf,
} from '../../model/scouting/record/index.ts'
import { notFound, read } from '../documents/read.ts'
import type { Context } from '../trpc.ts'

/** What became of an event's forecasts. */
export async function recordIn({ workspace }: Pick<Context, 'workspace'>, event: string) {
  const found = await read(workspace, 'event', { id: event })
  if (!found || found.removed) throw notFound('event', { id: event })
  const { matches } = await workspace.events.matches(event)
  const results = await workspace.events.standing(event)
  const forecasts = await workspace.forecasts.of(event)
  const { matches: counting, ...rest } = recordOf({ forecasts, matches: matches.map(({ match }) => match), results })
  return { ...rest, matches: counting.map(rowOf) }
}

function rowOf({ match, state, forecast, all, result }: Counting) {
  const { body } = forecast
  return {
    match,
    state,
    ...saidBy(forecast),
    records: body.records,
    neverSeen: body.neverSeen,
    teams: body.teams,
    scores: { red: scoreOf(body.scores.red), blue: scoreOf(body.scores.blue) },
    result: result && {
      red: result.result.red.points.total,
      blue: result.result.blue.points.total,
      since: result.since,
    },
    all: all.map(saidBy),
  }
}

const saidBy = ({ id, madeAt, version, body: { win, tie, loss } }: KeptForecast) => ({
  ...{ id, madeAt, version },
  ...{ win, tie, loss },
})

function scoreOf(histogram: Histogram) {
  const { low, high } = centralInterval(histogram, 0.8)
  return { mean: meanOfHistogram(histogram), interval80: [low, high] as [number, number] }
}
