import type { Game, Option } from '../../model/documents/types.ts'
import { inOrder, rankEvent } from '../../model/event/index.ts'
import { canonicalJson } from '../../model/scouting/index.ts'
import { recordOf } from '../../model/scouting/record/index.ts'
import { gameOf, inputOf } from '../estimates/estimates.ts'
import { madeFrom } from '../estimates/forecast.ts'
import { robotsKept } from '../estimates/robots.ts'
import type { Known } from '../records/known.ts'
import { hashOf } from '../records/rows.ts'
import type { Context } from '../trpc.ts'
import type { EventPack } from './contracts.ts'
import { thinned } from './thinned.ts'

type Asking = Pick<Context, 'workspace' | 'pool'>

/** Robots as packs have them, for as long as nothing new is known. */
const thin = new WeakMap<Known, Promise<{ [team: string]: Option }>>()

/** All of an event's teams as robots, so few draws and digits that a phone keeps them. */
export async function packedRobots(ctx: Asking, event: string): Promise<{ [team: string]: Option }> {
  const { input, known } = await inputOf(ctx, event)
  const before = thin.get(known)
  if (before) return before
  const { teams } = input
  const made = robotsKept(ctx, event, teams).then((options) =>
    Object.fromEntries(options.map((option, k) => [teams[k]!, thinned(option)])),
  )
  thin.set(known, made)
  // A failure is not kept.
  made.catch(() => thin.delete(known))
  return made
}

/**
 * What a browser takes along of an event to brief and to pick without a connection; null where it has all of that already.
 *
 * @param since the mark of the pack that the browser has
 */
export async function packOf(
  ctx: Asking,
  { event, since }: { event: string; since?: string | undefined },
): Promise<EventPack | { same: true; mark: string; madeAt: string }> {
  const of = await inputOf(ctx, event)
  const { event: record } = await gameOf(ctx, event)
  const { input, known, rules } = of
  const { matches } = input
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const forecasts = await ctx.workspace.forecasts.of(event)
  const standing = await ctx.workspace.events.standing(event)
  const { judgement } = recordOf({ forecasts, matches, results: standing })
  const calls = judgement?.calls ?? []
  const own = ownTeams(record, known)
  const from = madeFrom(of, results)
  const mark = hashOf(canonicalJson({ from, event: record, own, calls })).slice(0, 22)
  const madeAt = new Date().toISOString()
  if (since === mark) return { same: true, mark, madeAt }
  const game = input.game as Game
  const { criteria, per, rows } = rankEvent({ game, event: record, matches, results, seed: 1 })
  return {
    event: record,
    game,
    revision: rules[1],
    own,
    matches: matches.toSorted(inOrder),
    results,
    ranking: { criteria, per, rows: rows.map(({ rank, team, played, values }) => ({ rank, team, played, values })) },
    robots: await packedRobots(ctx, event),
    seen: matchesSeen(input),
    records: input.watched.filter(({ observation }) => observation.match !== null).length,
    calls,
    ...{ from, mark, madeAt },
  }
}

/** Our teams: as the event says, else those that were recorded in practice, since nobody times another team's. */
function ownTeams(event: EventPack['event'], { inForce }: Known): string[] {
  if (event.own !== undefined) return [event.own]
  const practised = inForce.flatMap(({ row, team }) =>
    row.kind === 'observation' && row.body.origin === 'practice' && team !== null ? [team] : [],
  )
  return [...new Set(practised)]
}

/** In how many matches each team was seen. */
function matchesSeen({ teams, watched }: Awaited<ReturnType<typeof inputOf>>['input']): { [team: string]: number } {
  const by = new Map(teams.map((team) => [team, new Set<string>()]))
  for (const { observation, team } of watched) {
    if (observation.match !== null && observation.subject === 'robot') by.get(team)?.add(observation.match)
  }
  return Object.fromEntries([...by].map(([team, matches]) => [team, matches.size]))
}
