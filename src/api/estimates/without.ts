import { voided } from '../../model/event/index.ts'
import { inOrder } from '../../model/event/order.ts'
import type { Estimate, TeamEstimate } from '../../model/scouting/estimates/index.ts'
import { withoutRecords } from '../../model/scouting/estimates/index.ts'
import type { Alliance, Match } from '../../model/scouting/index.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import { estimatesOf, inputOf } from './estimates.ts'
import { type Forecast, madeFor, play } from './forecast.ts'
import { keeper } from './keep.ts'

/** Coming matches that are played with and without the records: each is two forecasts of some seconds. */
const mostMatches = 3

type Numbers = { matches: number } & { [what in (typeof numbers)[number]]: Estimate }
const numbers = ['points', 'attempts', 'finishPoints', 'autonomousPoints'] as const

interface Ended {
  /** Chance to win, a tie counted half. */
  win: number
  /** Expected score. */
  score: number
}

export interface Without {
  teams: { team: string; with: Numbers; without: Numbers }[]
  /** From the side of a robot that the records are about. */
  matches: { match: string; alliance: Alliance; with: Ended; without: Ended }[]
  /** Coming matches of these robots in all. */
  coming: number
}

const kept = keeper<Map<string, Promise<Without>>>()

/** What is believed and forecast with and without some records: the same luck in both, so that differences are theirs. */
export async function withoutOf(
  ctx: Context,
  { event, records }: { event: string; records: readonly string[] },
): Promise<Without> {
  const { known, log } = await inputOf(ctx, event)
  const byRecords = await kept(log.of, known, async () => new Map())
  const key = records.toSorted().join()
  const before = byRecords.get(key)
  if (before) return before
  const made = work(ctx, { event, records })
  byRecords.set(key, made)
  made.catch(() => byRecords.delete(key))
  return made
}

async function work(ctx: Context, { event, records }: { event: string; records: readonly string[] }): Promise<Without> {
  const of = await inputOf(ctx, event)
  const { input } = of
  const which = new Set(records)
  const about = input.watched.filter(({ observation }) => which.has(observation.id))
  if (about.length === 0) {
    throw new ApiError({ code: 'notFound', message: 'None of these records counts in this event', path: ['records'] })
  }
  const teams = input.teams.filter((team) => about.some((each) => each.team === team))
  const fewer = withoutRecords(input, which)
  // Whoever asked first may go: the others wait for the same answer.
  const { signal } = new AbortController()
  const [{ teams: all }, less] = await Promise.all([
    estimatesOf(ctx, event),
    ctx.pool.run('estimatesOfTeams', { input: fewer, teams }, signal),
  ])
  const results = await ctx.workspace.events.results(event)
  const played = new Set(results.flatMap(({ match, result }) => (result ? [match] : [])))
  const coming = comingOf(input.matches, { played, teams })
  const matches: Without['matches'] = []
  // Other robots are believed to be otherwise too: what teams have in common is taken from fewer records.
  const robotsThen = new Map()
  for (const match of coming.slice(0, mostMatches)) {
    const alliance = match.red.some(({ team }) => teams.includes(team)) ? 'red' : 'blue'
    const { forecast: now } = await madeFor(ctx, { event, match: match.id })
    const { forecast: then } = await play(ctx, { event, of: { ...of, input: fewer }, match, robots: robotsThen })
    matches.push({ match: match.id, alliance, with: endedFor(alliance, now), without: endedFor(alliance, then) })
  }
  return {
    teams: teams.map((team, index) => ({
      team,
      with: numbersOf(all.find((each) => each.team === team)!),
      without: numbersOf(less[index]!),
    })),
    matches,
    coming: coming.length,
  }
}

function comingOf(
  matches: readonly Match[],
  { played, teams }: { played: ReadonlySet<string>; teams: readonly string[] },
): Match[] {
  const gone = voided(matches)
  return matches
    .filter(({ id, phase }) => phase !== 'practice' && !played.has(id) && !gone.has(id))
    .filter(({ red, blue }) => [...red, ...blue].some(({ team }) => teams.includes(team)))
    .toSorted(inOrder)
}

const numbersOf = (of: TeamEstimate): Numbers => ({
  matches: of.matches,
  points: of.points,
  attempts: of.attempts,
  finishPoints: of.finishPoints,
  autonomousPoints: of.autonomousPoints,
})

function endedFor(alliance: Alliance, { report }: Forecast): Ended {
  const { win, tie, loss, score } = report
  const own = alliance === 'red' ? win : loss
  return {
    win: own.probability + tie.probability / 2,
    score: (alliance === 'red' ? score.ours : score.theirs).mean,
  }
}
