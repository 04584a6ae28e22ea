import type { Game, Robot } from '../../model/documents/types.ts'
import { ModelError } from '../../model/errors.ts'
import type { FieldReport } from '../../model/scouting/field/index.ts'
import { notFound, read } from '../documents/read.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import { inputOf } from './estimates.ts'

export interface FieldCheck {
  team: string
  /** The revision is null where a decision record's snapshot does not say it. */
  design: { id: string; name: string; revision: number | null }
  /** The decision record in which the robot is frozen; null: a stored revision. */
  decision: { id: string; name: string; revision: number } | null
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
  decision?: string | undefined
}

interface Kept {
  from: object
  byQuestion: Map<string, Promise<FieldReport>>
}

/** Answers from the same records, with what they follow from. */
const kept = new WeakMap<object, Kept>()

/** A robot's timelines against a design, worked out once for what is known of the event. */
export async function fieldOf(ctx: Context, asked: Asked): Promise<FieldCheck> {
  const { event, team, only } = asked
  const { input, known, log, body } = await inputOf(ctx, event)
  const game = input.game as Game
  const against = asked.decision === undefined ? await storedDesign(ctx, asked) : await frozenDesign(ctx, asked)
  const { robot, design, decision } = against
  if (against.game !== game.id) {
    const message = `The design ${design.name} is of another game than the event`
    throw new ApiError({ code: 'malformed', message, path: [decision ? 'decision' : 'design'] })
  }
  let own = kept.get(log.of)
  if (own?.from !== known) {
    own = { from: known, byQuestion: new Map() }
    kept.set(log.of, own)
  }
  const { byQuestion } = own
  const question = JSON.stringify([team, design, decision, only])
  let report = byQuestion.get(question)
  if (!report) {
    const observations = input.watched.flatMap((each) => (each.team === team ? [each.observation] : []))
    const drivers = (body.drivers ?? []).filter((each) => each.team === team)
    const request = { game, robot, matches: input.matches, observations, drivers, ...(only && { only }) }
    // Whoever asked first may go: the others wait for the same answer.
    report = ctx.pool.run('field', request, new AbortController().signal)
    byQuestion.set(question, report)
    // A failure is not kept.
    report.catch(() => byQuestion.delete(question))
  }
  const changes = (input.changes ?? []).filter((change) => change.team === team).length
  return { team, design, decision, changes, report: await report.catch(inDesign) }
}

interface Against extends Pick<FieldCheck, 'design' | 'decision'> {
  robot: Robot
  /** Id of the game that the design is of. */
  game: string
}

async function storedDesign({ workspace }: Context, { design: id, revision }: Asked): Promise<Against> {
  const which = { id, ...(revision !== undefined && { revision }) }
  const found = await read(workspace, 'design', which)
  if (!found) throw notFound('design', which)
  const { robot, game } = found.body
  return { robot, game, design: { id, name: found.name, revision: found.revision }, decision: null }
}

/** The robot as a decision record has kept it, whatever became of the design since. */
async function frozenDesign({ workspace }: Context, { design: id, decision, revision }: Asked): Promise<Against> {
  if (revision !== undefined) {
    const message = 'A design is taken at a revision or as a decision record has it, not both'
    throw new ApiError({ code: 'malformed', message, path: ['revision'] })
  }
  const found = await read(workspace, 'decision', { id: decision! })
  if (!found) throw notFound('decision', { id: decision! })
  const { comparison, snapshot } = found.body
  const option = snapshot.options.find(({ robot }) => robot.id === id)
  if (!option) {
    const message = `The decision ${found.name} has no option with the design ${id}`
    throw new ApiError({ code: 'malformed', message, path: ['design'] })
  }
  // Which revision that was is in the trade-off that the record was made from.
  const made = await read(workspace, 'comparison', comparison)
  const then = made?.body.options.find(({ design }) => design.id === id)?.design.revision ?? null
  return {
    robot: option.robot,
    game: snapshot.game.id,
    design: { id, name: option.robot.name, revision: then },
    decision: { id: found.id, name: found.name, revision: found.revision },
  }
}

/** A path of the request that a thread was given says nothing to who asked. */
function inDesign(error: unknown): never {
  if (error instanceof ModelError) throw new ModelError(error.code, error.message, ['design'])
  throw error
}
