import { checkOption, type Game, type Option } from '../../model/documents/index.ts'
import type { Film } from '../../model/match/index.ts'
import { read } from '../documents/read.ts'
import { partsOf, resolved } from '../documents/resolve.ts'
import { ApiError } from '../errors.ts'
import type { Context } from '../trpc.ts'
import { packOf } from './pack.ts'

/** Robots of a match to train on. */
const robots = 6

/** The stored ways to play of a game that can be played as they are. */
async function optionsOf({ workspace }: Pick<Context, 'workspace'>, game: Game): Promise<Option[]> {
  const summaries = await workspace.list('option')
  const records = await Promise.all(summaries.map(({ id }) => read(workspace, 'option', { id })))
  const options = await Promise.all(
    records.map(async (record) => {
      if (!record || record.body.game !== game.id) return []
      const parts = await partsOf(workspace, record.body)
      return 'message' in parts ? [] : [resolved(record.body, parts).option]
    }),
  )
  return options.flat().filter((option) => checkOption(game, option).length === 0)
}

/** A simulated match of the event's game with the stored ways to play, dealt out by the seed. */
export async function trainingOf(ctx: Context, { event, seed }: { event: string; seed: number }): Promise<Film> {
  const { body: game } = (await packOf(ctx, event)).game
  const options = await optionsOf(ctx, game)
  if (options.length === 0) {
    const message = 'There is no way to play of this game that could be simulated: save one first'
    throw new ApiError({ code: 'notOffered', message, path: ['event'] })
  }
  const dealt = Array.from({ length: robots }, (_, robot) => options[(seed + robot) % options.length]!)
  return ctx.pool.run('film', { game, options: dealt, seed }, ctx.signal)
}
