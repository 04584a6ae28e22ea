import { assumedSlowing, type Briefing, type BriefingRequest, briefingSeed } from '../../model/briefing/index.ts'
import type { Alliance } from '../../model/scouting/index.ts'
import { briefInParts } from '../compute/briefInParts.ts'
import { ApiError } from '../errors.ts'
import { type Behind, LastMade } from '../estimates/atOnce.ts'
import { gameOf, type Input, inputOf } from '../estimates/estimates.ts'
import { madeFrom } from '../estimates/forecast.ts'
import { robotsKept } from '../estimates/robots.ts'
import { ownTeams } from '../pack/own.ts'
import { thinned } from '../pack/thinned.ts'
import type { Known } from '../records/known.ts'
import type { Context } from '../trpc.ts'

export interface BriefedMatch {
  match: string
  alliance: Alliance
  records: number
  neverSeen: string[]
  from: string
  /** Until then it was all that was known. */
  madeAt: string
  briefing: Briefing
}

/** Briefings of what is known, by match and alliance. */
const kept = new WeakMap<Known, Map<string, Promise<BriefedMatch>>>()

/** Those that were made last, by match and alliance as they were asked for. */
const last = new LastMade<BriefedMatch>()

interface Asked {
  event: string
  match: string
  alliance?: Alliance | undefined
}

/** The briefing of a match: from all that is known, or at once as it was made last, which says what it lacks. */
export async function briefingOf(
  ctx: Pick<Context, 'workspace' | 'pool' | 'hear' | 'log'>,
  { kept: atOnce = false, ...asked }: Asked & { kept?: boolean | undefined },
): Promise<BriefedMatch & { behind: Behind }> {
  const { event, match, alliance } = asked
  const make = () => newestOf(ctx, asked)
  const before = atOnce ? await last.take(ctx, { event, key: `${match}|${alliance ?? ''}`, make }) : null
  return before ? { ...before.of, behind: before.behind } : { ...(await make()), behind: null }
}

/** From all that is known; worked out once for the same, however many ask. */
async function newestOf(
  ctx: Pick<Context, 'workspace' | 'pool'>,
  { event, match: id, alliance: asked }: Asked,
): Promise<BriefedMatch> {
  const madeAt = new Date().toISOString()
  const of = await inputOf(ctx, event)
  const { event: record } = await gameOf(ctx, event)
  const match = of.input.matches.find((each) => each.id === id)
  if (!match)
    throw new ApiError({ code: 'notFound', message: `There is no match ${id} in this event`, path: ['match'] })
  const own = ownTeams(record, of.known)
  const ours = match.blue.some(({ team }) => own.includes(team)) ? 'blue' : 'red'
  const alliance = asked ?? ours
  const key = `${id}|${alliance}`
  const all = kept.get(of.known) ?? new Map<string, Promise<BriefedMatch>>()
  kept.set(of.known, all)
  const before = all.get(key)
  const made = before ?? work(ctx, { event, of, match, alliance, madeAt })
  if (!before) {
    all.set(key, made)
    // A failure is not kept.
    made.catch(() => all.delete(key))
  }
  const answer = await made
  last.keep(of.log, { key: `${id}|${asked ?? ''}`, known: of.known, of: answer })
  return answer
}

async function work(
  ctx: Pick<Context, 'workspace' | 'pool'>,
  {
    event,
    of,
    match,
    alliance,
    madeAt,
  }: { event: string; of: Input; match: Input['input']['matches'][number]; alliance: Alliance; madeAt: string },
): Promise<BriefedMatch> {
  const { input, level } = of
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const teams = [...match[alliance], ...match[alliance === 'red' ? 'blue' : 'red']].map(({ team }) => team)
  // As packs have them, so that a browser without a connection comes to the same.
  const robots = (await robotsKept(ctx, of, teams)).map(thinned)
  const request: BriefingRequest = {
    game: input.game,
    level,
    ours: robots.slice(0, 3),
    theirs: robots.slice(3),
    seed: briefingSeed,
    slowing: assumedSlowing,
  }
  // Whoever asked first may go: the others wait for the same answer.
  const briefing = await briefInParts(ctx.pool, request, { signal: new AbortController().signal })
  const seen = new Set(input.watched.map(({ team }) => team))
  return {
    match: match.id,
    alliance,
    records: input.watched.filter(({ observation }) => observation.match !== null).length,
    neverSeen: teams.filter((team) => !seen.has(team)),
    from: madeFrom(of, results),
    madeAt,
    briefing,
  }
}
