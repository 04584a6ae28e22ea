import type { Game } from '../../model/documents/types.ts'
import type { EventInput, TeamEstimate } from '../../model/scouting/estimates/index.ts'
import { counts, type Observation } from '../../model/scouting/index.ts'
import type { Tasks } from '../compute/tasks.ts'
import { notFound, read } from '../documents/read.ts'
import { candidateOf, knownOf, type Resolved } from '../records/known.ts'
import type { Context } from '../trpc.ts'
import { type Brought, type Chosen, earlierOf } from './earlier.ts'

type Asking = Pick<Context, 'workspace' | 'pool' | 'signal'>

export interface Estimated {
  records: number
  matches: number
  /** In own matches; null: all count alike. */
  halfLife: number | null
  earlier: EarlierSaid | null
  teams: TeamEstimate[]
}

/** The earlier event that a lead chose; null in `matches`: it is not here, or of another game. */
export interface EarlierSaid {
  event: string
  name: string | null
  discount: number
  /** Matches there of which something was seen of teams of this event, and these teams. */
  matches: number | null
  teams: number
}

/** The last answer of each event whose records are kept, with what it follows from; it goes with them. */
const worked = new WeakMap<object, { from: object; estimated: Promise<Estimated> }>()

const bodies = <Kind extends Resolved['row']['kind']>(records: readonly Resolved[], kind: Kind) =>
  records.flatMap(({ row }) =>
    row.kind === kind ? [row.body as Extract<Resolved['row'], { kind: Kind }>['body']] : [],
  )

export async function gameOf({ workspace }: Pick<Context, 'workspace'>, event: string) {
  const found = await read(workspace, 'event', { id: event })
  if (!found) throw notFound('event', { id: event })
  const game = await read(workspace, 'game', { id: found.body.game })
  if (!game) throw notFound('game', { id: found.body.game })
  return { event: found.body, game: game.body, revision: game.revision }
}

/** What counts of an event, as the model takes it. */
export async function inputOf(ctx: Pick<Context, 'workspace'>, event: string) {
  const { event: body, game, revision } = await gameOf(ctx, event)
  const { log, known } = await knownOf(ctx, event)
  const { matches } = await ctx.workspace.events.matches(event)
  const counting = known.inForce.filter((record) => counts(candidateOf(record), known.chosen))
  const watched = counting.flatMap(({ row, team }) =>
    row.kind === 'observation' && team !== null ? [{ observation: row.body, team }] : [],
  )
  const brought = body.earlier ? await earlierOf(ctx, { event, game: body.game, chosen: body.earlier }) : null
  const input: EventInput = {
    game: game as Game,
    teams: body.teams.map(({ team }) => team),
    matches: matches.map(({ match }) => match),
    watched,
    changes: bodies(known.inForce, 'change'),
    visits: bodies(known.inForce, 'visit'),
    halfLife: body.halfLife,
    ...(brought && { earlier: brought.earlier }),
  }
  const rules = [game.id, revision] as const
  return { input, known, log, counting, level: body.level, rules, body, brought }
}

export type Input = Awaited<ReturnType<typeof inputOf>>

/** All teams of an event, worked out once for what is known of it, however many ask. */
export async function estimatesOf(ctx: Asking, event: string): Promise<Estimated> {
  const { input, known, log, body, brought } = await inputOf(ctx, event)
  const before = worked.get(log.of)
  if (before?.from === known) return before.estimated
  // Whoever asked first may go: the others wait for the same answer.
  // Practice is of no match, and no estimate is made of it.
  const played = input.watched.flatMap(({ observation }) => observation.match ?? [])
  const estimated = ctx.pool.run('estimates', input, new AbortController().signal).then((teams) => ({
    records: played.length,
    matches: new Set(played).size,
    halfLife: input.halfLife ?? null,
    earlier: body.earlier ? earlierSaid(body.earlier, { brought, teams: input.teams }) : null,
    teams,
  }))
  worked.set(log.of, { from: known, estimated })
  // A failure is not kept.
  estimated.catch(() => worked.delete(log.of))
  return estimated
}

function earlierSaid(
  { event, discount }: Chosen,
  { brought, teams }: { brought: Brought | null; teams: readonly string[] },
): EarlierSaid {
  if (!brought) return { event, name: null, discount, matches: null, teams: 0 }
  const here = new Set(teams)
  const own = brought.earlier.watched.filter(({ team }) => here.has(team))
  return {
    event,
    name: brought.from.body.name,
    discount,
    matches: new Set(own.map(({ observation }) => observation.match)).size,
    teams: new Set(own.map(({ team }) => team)).size,
  }
}

const inTeleop = ({ clock }: Game, elapsed: number) => elapsed >= clock.auto

function placed(game: Game, { timeline = [], counts: counted = [] }: Observation) {
  const scored: { [goal: string]: number } = {}
  let missed = 0
  const add = (goal: string, n: number) => {
    scored[goal] = (scored[goal] ?? 0) + n
  }
  for (const { elapsed, what, goal, n = 1 } of timeline) {
    if (!inTeleop(game, elapsed) || goal === undefined) continue
    if (what === 'scored') add(goal, n)
    if (what === 'missed') missed += n
  }
  for (const { goal, period, scored: hit, missed: wide } of counted) {
    if (period !== 'teleop') continue
    add(goal, hit)
    missed += wide
  }
  return { scored, missed }
}

type Solutions = Tasks['solved']['answer']

const solutions = new WeakMap<object, { from: object; solved: Promise<Solutions> }>()

/** What all teams bring, solved from the official results; worked out once for what is known of the event. */
async function solvedIn(ctx: Asking, event: string): Promise<Solutions> {
  const { input, known, log } = await inputOf(ctx, event)
  const before = solutions.get(log.of)
  if (before?.from === known) return before.solved
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const { matches, teams } = input
  const solved = ctx.pool.run('solved', { matches, results, teams }, new AbortController().signal)
  solutions.set(log.of, { from: known, solved })
  solved.catch(() => solutions.delete(log.of))
  return solved
}

/** Everything of one team. */
export async function teamOf(ctx: Asking, { event, team }: { event: string; team: string }) {
  const { input, known, counting } = await inputOf(ctx, event)
  const { teams } = await estimatesOf(ctx, event)
  const estimate = teams.find((each) => each.team === team)
  if (!estimate) throw notFound('event', { id: `${event}/${team}` })
  const { game } = input
  const own = known.inForce.filter((record) => record.team === team)
  const which = new Set(counting.map(({ row }) => row.id))
  const watched = known.matches.flatMap(({ match }) => {
    const all = own.flatMap(({ row }) =>
      row.kind === 'observation' && row.body.match === match && row.body.subject === 'robot' ? [row.body] : [],
    )
    const [first, ...others] = all.filter(({ id }) => which.has(id))
    if (!first) return []
    const each = [first, ...others].map((body) => placed(game, body))
    const goals = [...new Set(each.flatMap(({ scored }) => Object.keys(scored)))]
    const mean = (of: (one: (typeof each)[number]) => number) =>
      each.reduce((sum, one) => sum + of(one), 0) / each.length
    return [
      {
        match,
        records: all.map(({ id, scout }) => ({ id, scout, counts: which.has(id) })),
        timeline: first.timeline ?? [],
        absent: first.absent === true,
        ...(first.finish && { finish: first.finish.achieved }),
        scored: Object.fromEntries(goals.map((goal) => [goal, mean(({ scored }) => scored[goal] ?? 0)])),
        missed: mean(({ missed }) => missed),
      },
    ]
  })
  const all = await solvedIn(ctx, event)
  const solved = Object.fromEntries(
    Object.entries(all).flatMap(([category, of]) => (of[team] ? [[category, of[team]]] : [])),
  )
  return { estimate, watched, claims: bodies(own, 'visit'), solved }
}
