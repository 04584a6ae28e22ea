import type { EarlierEvent } from '../../model/scouting/estimates/index.ts'
import { counts, type EventRecord } from '../../model/scouting/index.ts'
import { read, type Stored } from '../documents/read.ts'
import { candidateOf, knownOf, type Resolved } from '../records/known.ts'
import type { Context } from '../trpc.ts'

type Asking = Pick<Context, 'workspace'>
export type Chosen = NonNullable<EventRecord['earlier']>

/** What an earlier event brings along, and what of it belongs into a mark. */
export interface Brought {
  from: Stored<'event'>
  earlier: EarlierEvent
  /** Observations that count, and changes of robots. */
  records: readonly { id: string; team: string | null }[]
}

/** Records of an event that is stored here and played by the same game; null where there is none such. */
export async function earlierOf(
  ctx: Asking,
  { event, game, chosen }: { event: string; game: string; chosen: Chosen },
): Promise<Brought | null> {
  const from = await read(ctx.workspace, 'event', { id: chosen.event })
  if (!from || from.removed || from.body.id === event || from.body.game !== game) return null
  const { known } = await knownOf(ctx, chosen.event)
  const { matches } = await ctx.workspace.events.matches(chosen.event)
  const counting = known.inForce.filter((record) => counts(candidateOf(record), known.chosen))
  const changes = known.inForce.filter(({ row }) => row.kind === 'change')
  const observations = counting.filter(({ row }) => row.kind === 'observation' && row.body.match !== null)
  return {
    from,
    records: [...observations, ...changes].map(({ row, team }) => ({ id: row.id, team })),
    earlier: {
      discount: chosen.discount,
      changed: chosen.changed ?? [],
      matches: matches.map(({ match }) => match),
      watched: observations.flatMap(({ row, team }) =>
        row.kind === 'observation' && team !== null ? [{ observation: row.body, team }] : [],
      ),
      changes: changesIn(changes),
    },
  }
}

const changesIn = (records: readonly Resolved[]) =>
  records.flatMap(({ row }) => (row.kind === 'change' ? [row.body] : []))
