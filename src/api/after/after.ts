import type { DecisionRecord } from '../../model/documents/records.ts'
import type { Game } from '../../model/documents/types.ts'
import { type AfterReport, afterEvent, type PublishedEvent, publishedEvent } from '../../model/event/after/index.ts'
import { rankEvent } from '../../model/event/index.ts'
import { countingForecasts } from '../../model/scouting/record/index.ts'
import { notFound, read, type Stored } from '../documents/read.ts'
import { gameOf, inputOf } from '../estimates/estimates.ts'
import { fieldOf } from '../estimates/field.ts'
import type { Context } from '../trpc.ts'

export interface After {
  /** The design that the robot is looked at by; null where there is none of the game. */
  design: { id: string; name: string; revision: number } | null
  /** Designs of the game to choose among. */
  designs: { id: string; name: string }[]
  /** Designs that were copied with the times of this event's field. */
  copies: { id: string; name: string; shifts: number }[]
  report: AfterReport
}

export interface AfterAsked {
  event: string
  team: string
  design?: string | undefined
}

/** What was predicted of our team at an event, what was seen, and what that asks. */
export async function afterOf(ctx: Context, { event, team, design: asked }: AfterAsked): Promise<After> {
  const { input, body } = await inputOf(ctx, event)
  const game = input.game as Game
  if (!input.teams.includes(team)) throw notFound('event', { id: `${event}/${team}` })
  const designs = (await allOf(ctx, 'design')).filter((each) => each.body.game === game.id)
  const decisions = (await allOf(ctx, 'decision'))
    .map((each) => each.body)
    .filter(({ snapshot }) => snapshot.game.id === game.id)
    .sort((a, b) => (a.decidedOn < b.decidedOn ? 1 : -1))
  const design = designs.find(({ id }) => id === asked) ?? chosenAmong(designs, decisions)
  if (asked !== undefined && design?.id !== asked) throw notFound('design', { id: asked })
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const standing = await ctx.workspace.events.standing(event)
  const forecasts = await ctx.workspace.forecasts.of(event)
  const holdSeconds = holdSecondsOf(decisions, design?.id)
  const [check, beside] = await Promise.all([
    design ? fieldOf(ctx, { event, team, design: design.id, only: 'match' }) : null,
    input.watched.some((each) => each.team === team)
      ? ctx.pool.run('sideBySide', { input: { ...input, holdSeconds }, teams: [team] }, ctx.signal)
      : null,
  ])
  const report = afterEvent({
    game,
    team,
    matches: input.matches,
    results,
    ranking: rankEvent({ game, event: body, matches: input.matches, results, seed: 1 }),
    counting: countingForecasts(forecasts, input.matches, standing),
    watched: input.watched,
    changes: input.changes ?? [],
    field: check?.report ?? null,
    points: beside?.total[0] ?? null,
    decisions,
    design: design?.id ?? null,
  })
  const nameOf = ({ id, name }: { id: string; name: string }) => ({ id, name })
  return {
    design: design ? { ...nameOf(design), revision: design.revision } : null,
    designs: designs.map(nameOf),
    copies: designs
      .filter((each) => each.body.fromField?.event === event)
      .map((each) => ({ ...nameOf(each), shifts: each.body.fromField?.shifts.length ?? 0 })),
    report,
  }
}

async function allOf<Kind extends 'design' | 'decision'>({ workspace }: Context, kind: Kind): Promise<Stored<Kind>[]> {
  const found = []
  for (const { id } of await workspace.list(kind)) {
    const each = await read(workspace, kind, { id })
    if (each) found.push(each)
  }
  return found
}

/** The design that the newest decision chose, else the first that is no copy from the field. */
function chosenAmong(designs: readonly Stored<'design'>[], decisions: readonly DecisionRecord[]) {
  const robots = decisions.map(({ chosen, snapshot }) => snapshot.options.find(({ id }) => id === chosen)?.robot.id)
  const decided = robots.flatMap((robot) => designs.find(({ id }) => id === robot) ?? [])[0]
  return decided ?? designs.find(({ body }) => !body.fromField) ?? designs[0]
}

/** What one piece was taken to hold, as the newest decision about the design has it: else such goals would count for nothing. */
function holdSecondsOf(decisions: readonly DecisionRecord[], design: string | undefined): { [goal: string]: number } {
  const options = decisions.map(({ chosen, snapshot }) => snapshot.options.find(({ id }) => id === chosen))
  return (options.find((option) => option?.robot.id === design) ?? options[0])?.holdSeconds ?? {}
}

/** The event as it can be given to other teams, with what we say of ourselves. */
export async function publishedOf(ctx: Context, { event, team, design }: AfterAsked): Promise<PublishedEvent> {
  const { input } = await inputOf(ctx, event)
  const { event: record, game, revision } = await gameOf(ctx, event)
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const { matches, watched } = input
  return publishedEvent({
    event: record,
    game,
    revision,
    matches,
    results,
    ranking: rankEvent({ game, event: record, matches, results, seed: 1 }),
    watched,
    after: (await afterOf(ctx, { event, team, design })).report,
  })
}
