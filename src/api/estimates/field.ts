import type { Game } from '../../model/documents/types.ts'
import { ModelError } from '../../model/errors.ts'
import type { FieldReport } from '../../model/scouting/field/index.ts'
import { notFound, read } from '../documents/read.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'

export interface FieldCheck {
  team: string
  design: { id: string; name: string; revision: number }
  /** How often the robot was changed during the event. */
  changes: number
  report: FieldReport
}

export interface TimedTeam {
  team: string
  matches: number
  practice: number
}

/** Which robots have records with times, and how many: those with practice first, because they are somebody's own. */
export async function timedTeams(ctx: Pick<Context, 'workspace'>, event: string): Promise<TimedTeam[]> {
  const { input } = await inputOf(ctx, event)
  const runs = new Map<string, { matches: Set<string>; practice: Set<string> }>()
  const phases = new Map(input.matches.map(({ id, phase }) => [id, phase]))
  for (const { observation, team } of input.watched) {
    const { id, match, subject, timeline = [] } = observation
    if (subject !== 'robot' || timeline.length === 0) continue
    const own = runs.get(team) ?? { matches: new Set(), practice: new Set() }
    runs.set(team, own)
    if (match !== null && phases.get(match) !== 'practice') own.matches.add(match)
    else own.practice.add(match ?? id)
  }
  return [...runs]
    .map(([team, { matches, practice }]) => ({ team, matches: matches.size, practice: practice.size }))
    .sort((a, b) => b.practice - a.practice || a.team.localeCompare(b.team, 'en', { numeric: true }))
}

interface Asked {
  event: string
  team: string
  design: string
  revision?: number | undefined
  only?: 'match' | 'practice' | undefined
}

interface Kept {
  from: object
  byQuestion: Map<string, Promise<FieldReport>>
}

/** Answers from the same records, with what they follow from. */
const kept = new WeakMap<object, Kept>()

/** A robot's timelines against a design, worked out once for what is known of the event. */
export async function fieldOf(ctx: Context, { event, team, design: id, revision, only }: Asked): Promise<FieldCheck> {
  const { input, known, log } = await inputOf(ctx, event)
  const design = await read(ctx.workspace, 'design', { id, ...(revision !== undefined && { revision }) })
  if (!design) throw notFound('design', { id, ...(revision !== undefined && { revision }) })
  const game = input.game as Game
  if (design.body.game !== game.id) {
    const message = `The design ${design.name} is of another game than the event`
    throw new ApiError({ code: 'malformed', message, path: ['design'] })
  }
  let own = kept.get(log.of)
  if (own?.from !== known) {
    own = { from: known, byQuestion: new Map() }
    kept.set(log.of, own)
  }
  const { byQuestion } = own
  const question = JSON.stringify([team, id, design.revision, only])
  let report = byQuestion.get(question)
  if (!report) {
    const observations = input.watched.flatMap((each) => (each.team === team ? [each.observation] : []))
    const request = { game, robot: design.body.robot, matches: input.matches, observations, ...(only && { only }) }
    // Whoever asked first may go: the others wait for the same answer.
    report = ctx.pool.run('field', request, new AbortController().signal)
    byQuestion.set(question, report)
    // A failure is not kept.
    report.catch(() => byQuestion.delete(question))
  }
  const changes = (input.changes ?? []).filter((change) => change.team === team).length
  return {
    team,
    design: { id, name: design.name, revision: design.revision },
    changes,
    report: await report.catch(inDesign),
  }
}

/** A path of the request that a thread was given says nothing to who asked. */
function inDesign(error: unknown): never {
  if (error instanceof ModelError) throw new ModelError(error.code, error.message, ['design'])
  throw error
}
