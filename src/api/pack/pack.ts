import { endingsOf } from '../../model/briefing/index.ts'
import type { Game, Option } from '../../model/documents/types.ts'
import { inOrder, rankEvent } from '../../model/event/index.ts'
import { canonicalJson } from '../../model/scouting/index.ts'
import { LastMade } from '../estimates/atOnce.ts'
import { type Input, inputOf } from '../estimates/estimates.ts'
import { madeFrom } from '../estimates/forecast.ts'
import { robotsKept } from '../estimates/robots.ts'
import { mostlyKept } from '../http/squeezed.ts'
import type { Known } from '../records/known.ts'
import { hashOf } from '../records/rows.ts'
import type { Context } from '../trpc.ts'
import { callsOf } from './calls.ts'
import type { EventPack, EventPackAnswer } from './contracts.ts'
import { ownTeams } from './own.ts'
import { thinned } from './thinned.ts'

type Asking = Pick<Context, 'workspace' | 'pool'>

/** Robots as packs have them, for as long as nothing new is known. */
const thin = new WeakMap<Known, Promise<{ [team: string]: Option }>>()

/** All of an event's teams as robots, so few draws and digits that a phone keeps them. */
export async function packedRobots(
  ctx: Pick<Context, 'pool'>,
  { input, known }: Pick<Input, 'input' | 'known'>,
): Promise<{ [team: string]: Option }> {
  const before = thin.get(known)
  if (before) return before
  const { teams } = input
  const made = robotsKept(ctx, { input, known }, teams).then((options) =>
    Object.fromEntries(options.map((option, k) => [teams[k]!, thinned(option)])),
  )
  thin.set(known, made)
  // A failure is not kept.
  made.catch(() => thin.delete(known))
  return made
}

/** What was known when an event's robots were worked out last. */
interface Made {
  of: Input
  robots: { [team: string]: Option }
  /** Until then it was all that was known. */
  madeAt: string
}

const last = new LastMade<Made>()

async function madeBy(ctx: Asking, { of, madeAt }: Pick<Made, 'of' | 'madeAt'>): Promise<Made> {
  const made = { of, robots: await packedRobots(ctx, of), madeAt }
  last.keep(of.log, { key: 'pack', known: of.known, of: made })
  return made
}

/** A pack but for what is another each time. */
type Whole = Omit<EventPack, 'madeAt' | 'behind'>

/** Packs of what was known, each with what else it follows from. */
const wholes = new WeakMap<Known, { by: string; whole: Whole }>()

/**
 * What a browser takes along of an event to brief and to pick without a connection; null where it has all of that already.
 *
 * @param since the mark of the pack that the browser has
 * @param kept at once, with robots and all that follows from records as they were worked out last; all else is as it is now
 */
export async function packOf(
  ctx: Asking & Pick<Context, 'hear' | 'log'>,
  { event, since, kept = false }: { event: string; since?: string | undefined; kept?: boolean | undefined },
): Promise<EventPackAnswer> {
  const { workspace } = ctx
  const now = async () => {
    const madeAt = new Date().toISOString()
    return { madeAt, of: await inputOf(ctx, event) }
  }
  const asked = new Date().toISOString()
  const make = async () => madeBy(ctx, await now())
  const before = kept ? await last.take(ctx, { event, key: 'pack', make }) : null
  const behind = before?.behind ?? null
  const { of, madeAt } = before ? { ...before.of, ...(!behind && { madeAt: asked }) } : await now()
  const { frame, rest } = before?.at ?? of.known.at
  // Plans and forecasts are only added. What is read behind these marks may be newer than they are, and is then read anew.
  const by = JSON.stringify([frame, rest, await workspace.plans.count(event), await workspace.forecasts.count(event)])
  const there = wholes.get(of.known)
  if (there?.by === by) {
    const { whole } = there
    return since === whole.mark ? { same: true, mark: since, madeAt, behind } : mostlyKept(whole, { madeAt, behind })
  }
  const { input, known, rules, body: record } = of
  const { matches } = input
  const results = (await workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const calls = await callsOf(ctx, { event, of })
  const own = ownTeams(record, known)
  const from = madeFrom(of, results)
  const plans = await workspace.plans.of(event)
  // Results are in `from` too, but not in that of a pack that was made before.
  const marked = { from, results, event: record, own, calls, plans: plans.map(({ id }) => id) }
  const mark = hashOf(canonicalJson(marked)).slice(0, 22)
  if (since === mark) return { same: true, mark, madeAt, behind }
  const game = input.game as Game
  const { criteria, per, rows } = rankEvent({ game, event: record, matches, results, seed: 1 })
  const whole: Whole = {
    event: record,
    game,
    revision: rules[1],
    own,
    matches: matches.toSorted(inOrder),
    results,
    ranking: { criteria, per, rows: rows.map(({ rank, team, played, values }) => ({ rank, team, played, values })) },
    robots: (before?.of ?? (await madeBy(ctx, { of, madeAt }))).robots,
    seen: matchesSeen(input),
    records: input.watched.filter(({ observation }) => observation.match !== null).length,
    calls,
    plans,
    endings: endingsIn(of, new Set(plans.map((plan) => plan.match))),
    ...{ from, mark },
  }
  wholes.set(known, { by, whole })
  return mostlyKept(whole, { madeAt, behind })
}

/** How robots ended the matches that something was agreed for. */
function endingsIn({ input }: Input, agreed: ReadonlySet<string>) {
  const about = input.watched.filter(({ observation: { match } }) => match !== null && agreed.has(match))
  return endingsOf(input.game.clock, about)
}

/** In how many matches each team was seen. */
function matchesSeen({ teams, watched }: Input['input']): { [team: string]: number } {
  const by = new Map(teams.map((team) => [team, new Set<string>()]))
  for (const { observation, team } of watched) {
    if (observation.match !== null && observation.subject === 'robot') by.get(team)?.add(observation.match)
  }
  return Object.fromEntries([...by].map(([team, matches]) => [team, matches.size]))
}
