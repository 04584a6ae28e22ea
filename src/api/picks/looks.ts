import { randomUUID } from 'node:crypto'
import { rankEvent, seatOf, voided } from '../../model/event/index.ts'
import { inOrder } from '../../model/event/order.ts'
import { slotsOf } from '../../model/event/seats.ts'
import type { ComingDecision, LookPlan } from '../../model/picks/looks/index.ts'
import { knowledgeGradient, whereToLook } from '../../model/picks/looks/index.ts'
import type { Lot } from '../../model/picks/scores/index.ts'
import { samplePairings } from '../../model/picks/scores/index.ts'
import type { SelectionRules } from '../../model/picks/selection/index.ts'
import { fewestTeams } from '../../model/picks/usual.ts'
import type { TeamEstimate } from '../../model/scouting/estimates/index.ts'
import type { Assignment, Match } from '../../model/scouting/types.ts'
import { estimatesOf, inputOf } from '../estimates/estimates.ts'
import { keeper } from '../estimates/keep.ts'
import type { Context } from '../trpc.ts'
import { ratedIn } from './rated.ts'

type Asking = Pick<Context, 'workspace' | 'pool' | 'signal'>

/** Simulated matches of each pairing of the sample, as the benchmark of the pick order has it. */
const each = 64
const seed = 1

const kept = keeper<{ lots: Lot[]; decisions: Map<string, Promise<ComingDecision>> }>()

/** Minutes without a match in which everybody rests, as where seats are shared out. */
const usualPause = 30

export interface LooksAsked {
  event: string
  team: string
  /** Who is free to look. */
  people?: string[] | undefined
  longest?: number | undefined
  rest?: number | undefined
  pause?: number | undefined
}

export interface LooksAnswer {
  decision: { seed: number; alliances: number; replacement: string | null }
  /** Whom the decision is among, those first at whom a look is worth most. `worth` and `sd` in chance to win. */
  teams: { team: string; mean: number; sd: number; worth: number; matches: number; next: string | null }[]
  looks: LookPlan['looks']
  /** The looks as seats. */
  assignments: Assignment[]
  /** Of the assignments as they are, for taking these over. */
  mark: string
  /** Matches to come, and robots in them whom nobody watches yet. */
  coming: number
  unwatched: number
}

async function decisionOf(ctx: Asking, { event, team: us }: { event: string; team: string }): Promise<ComingDecision> {
  const { input, known, log, body } = await inputOf(ctx, event)
  const rated = await ratedIn(ctx, event)
  const work = await kept(log.of, known, async () => ({ lots: await sampled(ctx, rated), decisions: new Map() }))
  const before = work.decisions.get(us)
  if (before) return before
  const made = (async () => {
    const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
    const { teams: estimates } = await estimatesOf(ctx, event)
    const ranking = rankEvent({ game: rated.game, event: body, matches: input.matches, results, seed: 1 })
    const request = {
      game: rated.game,
      teams: rated.teams,
      lots: work.lots,
      rules: rulesOf(body.playoff, rated.teams.length),
      seeds: ranking.rows.map(({ team }) => team),
      us,
      perMatch: Object.fromEntries(estimates.map((estimate) => [estimate.team, perMatchOf(estimate)])),
    }
    return ctx.pool.run('decision', request, new AbortController().signal)
  })()
  work.decisions.set(us, made)
  made.catch(() => work.decisions.delete(us))
  return made
}

async function sampled(ctx: Asking, { game, level, teams }: Awaited<ReturnType<typeof ratedIn>>): Promise<Lot[]> {
  const pairings = samplePairings({ teams, seed })
  const mark = randomUUID()
  const field = { game, level, teams: teams.map(({ team, option }) => ({ team, option })) }
  const requests = pairings.map((pairing, k) => ({ ...pairing, seed: 100 * seed + k, from: 0, to: each }))
  const halves = [0, 1].map((half) => requests.filter((_, k) => k % 2 === half))
  const played = await Promise.all(
    halves.map((half) => ctx.pool.run('seedLots', { mark, field, requests: half }, new AbortController().signal)),
  )
  return pairings.map((pairing, k) => ({ pairing, played: played[k % 2]![k >> 1]! }))
}

/** As the event says; where it says nothing, eight alliances of three, fewer where there are too few teams. */
function rulesOf(
  { alliances = 8, size = 3 }: { alliances?: number; size?: number } = {},
  teams: number,
): SelectionRules {
  return {
    alliances: Math.max(2, Math.min(alliances, Math.floor(teams / 3))),
    size,
    serpentine: true,
    captainsInvitable: true,
    afterDeclining: 'captain',
  }
}

/** By how much the next match is less sure than the expectation: what one match errs by (points²). Both are read from intervals of 80 %. */
function perMatchOf({ points: { interval80, next80 } }: TeamEstimate): number {
  const sd = ([low, high]: [number, number]) => (high - low) / 2.5631
  const [expected, next] = [sd(interval80), next80 ? sd(next80) : 0]
  return Math.max(1, next * next - expected * expected)
}

const minutesBetween = (a: string | undefined, b: string | undefined): number =>
  a === undefined || b === undefined ? 0 : (Date.parse(b) - Date.parse(a)) / 60_000

/** Where there are too few teams for two alliances, nobody is to be decided about. */
const none: ComingDecision = { seed: 1, prospects: [], replacement: null }

/** Where one more look is worth most for whom we invite, and who could make which within the breaks. */
export async function looksIn(ctx: Asking, asked: LooksAsked): Promise<LooksAnswer> {
  const { event, team, people = [], longest = 6, rest = 2, pause = usualPause } = asked
  const { input, body } = await inputOf(ctx, event)
  const decision = input.teams.length < fewestTeams ? none : await decisionOf(ctx, { event, team })
  const results = await ctx.workspace.events.results(event)
  const over = new Set(results.flatMap(({ match, result }) => (result ? [match] : [])))
  const { assignments, mark } = await ctx.workspace.events.assignments(event)
  const coming = comingOf(input.matches, over)
  const isComing = new Set(coming.map(({ id }) => id))
  const byMatch = new Map(input.matches.map((match) => [match.id, match]))
  const planned = assignments.flatMap(({ match, seat, person }) => {
    const of = byMatch.get(match)
    if (person === null || !of || !isComing.has(match)) return []
    const slot = slotsOf(of).find((one) => one.seat.alliance === seat.alliance && one.seat.position === seat.position)
    return slot ? [{ match, team: slot.slot.team }] : []
  })
  const { prospects } = decision
  const plan = whereToLook({
    prospects,
    matches: coming.map((match, k) => ({
      id: match.id,
      teams: slotsOf(match).map(({ slot }) => slot.team),
      pause: minutesBetween(coming[k - 1]?.time, match.time) >= pause,
    })),
    people: people.map((person) => ({
      person,
      busy: new Set(assignments.flatMap((own) => (own.person === person ? [own.match] : []))),
    })),
    planned,
    longest,
    rest,
  })
  const now = new Map(knowledgeGradient(prospects).map((worth, k) => [prospects[k]!.team, worth]))
  const isPlanned = new Set(planned.map((look) => `${look.match} ${look.team}`))
  const matchesSeen = new Map<string, Set<string>>()
  for (const { observation, team: about } of input.watched)
    if (observation.match !== null) matchesSeen.set(about, (matchesSeen.get(about) ?? new Set()).add(observation.match))
  const nextOf = (of: string) =>
    coming.find((match) => seatOf(match, of) !== null && !isPlanned.has(`${match.id} ${of}`))?.id ?? null
  return {
    decision: {
      seed: decision.seed,
      alliances: rulesOf(body.playoff, input.teams.length).alliances,
      replacement: decision.replacement,
    },
    teams: prospects
      .map(({ team: of, mean, variance }) => ({
        team: of,
        mean,
        sd: Math.sqrt(variance),
        worth: now.get(of) ?? 0,
        matches: matchesSeen.get(of)?.size ?? 0,
        next: nextOf(of),
      }))
      .sort((a, b) => b.worth - a.worth),
    looks: plan.looks,
    assignments: plan.looks.flatMap(({ match, team: of, person }): Assignment[] => {
      const seat = seatOf(byMatch.get(match)!, of)
      return seat ? [{ match, seat, person }] : []
    }),
    mark,
    coming: coming.length,
    unwatched: coming.reduce(
      (sum, match) => sum + slotsOf(match).filter(({ slot }) => !isPlanned.has(`${match.id} ${slot.team}`)).length,
      0,
    ),
  }
}

/** Matches of the ranking to come: after them alliances are formed. */
function comingOf(matches: readonly Match[], over: ReadonlySet<string>): Match[] {
  const gone = voided(matches)
  return matches
    .filter(({ id, phase }) => phase === 'qualification' && !gone.has(id) && !over.has(id))
    .toSorted(inOrder)
}
