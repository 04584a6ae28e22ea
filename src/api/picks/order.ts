import { rankEvent } from '../../model/event/index.ts'
import type { Choice, PickOrder } from '../../model/picks/order/types.ts'
import { protocolOf } from '../../model/picks/protocol/index.ts'
import { askOf, fewestTeams, seedsBy, usualRules } from '../../model/picks/usual.ts'
import { ApiError } from '../errors.ts'
import { inputOf } from '../estimates/estimates.ts'
import { madeFrom } from '../estimates/forecast.ts'
import { refusal } from '../event/reading.ts'
import { packedRobots } from '../pack/pack.ts'
import type { Context } from '../trpc.ts'
import { packedRatings } from './rated.ts'
import { linesOf } from './selection.ts'

export interface OrderAnswer extends Omit<PickOrder, 'us' | 'choices'> {
  team: string
  supposed: boolean
  records: number
  choices: (Omit<Choice, 'simulated'> & { free: number | null })[]
}

/**
 * Whom a team should invite first as the selection stands: as the screen works it out, from the same robots and ratings. Teams that are set
 * aside are left out for leads alone, since the notes are theirs.
 */
export async function orderIn(
  ctx: Context,
  { event, team: us }: { event: string; team: string },
): Promise<OrderAnswer> {
  const of = await inputOf(ctx, event)
  const { input, level, body } = of
  if (!input.teams.includes(us)) throw refusal('malformed', { code: 'noTeamOfEvent', parts: { team: us } }, ['team'])
  if (input.teams.length < fewestTeams) throw new ApiError({ code: 'notOffered', message: tooFew, path: ['event'] })
  const [robots, { ratings }, { lines }] = await Promise.all([
    packedRobots(ctx, event),
    packedRatings(ctx, { event }),
    linesOf(ctx, event),
  ])
  const results = (await ctx.workspace.events.results(event)).flatMap(({ result }) => result ?? [])
  const game = input.game
  const { rows } = rankEvent({ game, event: body, matches: input.matches, results, seed: 1 })
  const seeds = seedsBy(
    input.teams,
    rows.map((row) => row.team),
  )
  const ask = askOf(protocolOf(lines), { rules: usualRules(body), seeds, us })
  const picks = { key: madeFrom(of, results), game, level: level ?? null, robots, ratings: ratings! }
  const { supposed, ...asked } = ask
  const { order, waiting } = await ctx.pool.run('pickOrder', { of: picks, ask: asked }, ctx.signal)
  const { alliance, replacement, replacementFree, needs, opponents } = order
  const free = new Map(waiting.map((each) => [each.team, each.chance]))
  return {
    ...{ team: us, supposed, alliance, replacement, replacementFree, needs, opponents },
    records: input.watched.filter(({ observation }) => observation.match !== null).length,
    choices: order.choices.map(({ simulated: _, ...choice }) => ({ ...choice, free: free.get(choice.team) ?? null })),
  }
}

const tooFew = 'There are too few teams for two alliances: six at least'
