import {
  type KeptLine,
  type LineRefusal,
  refusedLine,
  topicOf,
  type Written,
} from '../../model/picks/protocol/index.ts'
import type { EventRecord } from '../../model/scouting/types.ts'
import type { ApiError } from '../errors.ts'
import { byOf, changedMeanwhile, eventAt, refusal } from '../event/reading.ts'
import type { Context } from '../trpc.ts'

interface Asked {
  event: string
  after: string | null
  lines: readonly Written[]
}

/** What was called out; leads see their notes too. */
export async function linesOf(ctx: Context, event: string): Promise<{ lines: KeptLine[] }> {
  await eventAt(ctx.workspace, event)
  return shown(ctx, await ctx.workspace.selection.lines(event))
}

const shown = ({ who }: Context, lines: readonly KeptLine[]) => ({
  lines: lines.filter(({ line }) => who.role === 'lead' || topicOf(line) === 'selection'),
})

/** Keeps lines that follow those that are kept. */
export async function addLines(ctx: Context, { event, after, lines }: Asked): Promise<{ lines: KeptLine[] }> {
  const record = await eventAt(ctx.workspace, event)
  const topic = topicOf(lines[0]!.line)
  const other = lines.findIndex(({ line }) => topicOf(line) !== topic)
  if (other >= 0) throw refusal('malformed', { code: 'otherTopic', parts: {} }, ['lines', other])
  refuseStrangers(record, lines)
  const judge = (before: readonly KeptLine[]) => refusedLine(before, lines)
  const outcome = await ctx.workspace.selection.add(event, { topic, after, lines, by: byOf(ctx), judge })
  if ('stale' in outcome) throw changedMeanwhile()
  if ('refused' in outcome) throw notTaken(outcome.refused as NonNullable<ReturnType<typeof judge>>)
  ctx.tell({ event, what: 'selection' })
  return shown(ctx, outcome.kept)
}

/** Every team that is named is one of the event's. */
function refuseStrangers({ teams }: EventRecord, lines: readonly Written[]): void {
  const known = new Set(teams.map(({ team }) => team))
  for (const [index, { line }] of lines.entries()) {
    const stranger = teamsIn(line).find((team) => !known.has(team))
    if (stranger !== undefined)
      throw refusal('malformed', { code: 'noTeamOfEvent', parts: { team: stranger } }, ['lines', index, 'line'])
  }
}

function teamsIn(line: Written['line']): readonly string[] {
  switch (line.kind) {
    case 'begins':
      return line.seeds
    case 'order':
      return line.teams
    case 'called':
      return [line.step.team]
    case 'aside':
      return [line.team]
    case 'undoes':
      return []
  }
}

function notTaken({ index, refusal: why }: { index: number; refusal: LineRefusal }): ApiError {
  const path = ['lines', index, 'line']
  switch (why.why) {
    case 'notBegun':
      return refusal('conflict', { code: 'selectionNotBegun', parts: {} }, path)
    case 'notLast':
      return refusal('conflict', { code: 'selectionNotLast', parts: {} }, path)
    case 'seedTwice':
      return refusal('malformed', { code: 'seedTwice', parts: { team: why.team } }, path)
    case 'refused':
      return refusal('conflict', { code: 'notInvitable', parts: { team: why.team, kind: why.reason } }, path)
  }
}
