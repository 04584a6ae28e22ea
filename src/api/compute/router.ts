import type { Game, Robot } from '../../model/documents/index.ts'
import { checkGame, checkLeg, checkOption, checkRobot, within } from '../../model/documents/index.ts'
import type { Problem } from '../../model/errors.ts'
import { estimateAnswer, estimateBody, estimateRequest, forecastRequest } from '../contracts/compute/estimate.ts'
import { fieldReport, fieldRequest } from '../contracts/compute/field.ts'
import {
  compareAnswer,
  compareRequest,
  legAnswer,
  legRequest,
  lineupAnswer,
  lineupRequest,
  matchAnswer,
  matchRequest,
  planAnswer,
  planRequest,
  seasonAnswer,
  seasonRequest,
  travelAnswer,
  travelRequest,
} from '../contracts/index.ts'
import { refuse } from '../errors.ts'
import { procedure, router } from '../trpc.ts'
import { refuseHabit } from './checkHabit.ts'
import { checkSeason } from './checkSeason.ts'
import { computeEndpoint as endpoint } from './endpoint.ts'
import { estimate, forecast } from './estimate.ts'
import { longWorks } from './longWorks.ts'
import { planInParts } from './planInParts.ts'
import { seasonInParts } from './seasonInParts.ts'
import { timing } from './timing.ts'

function checkPair(game: Game, robot: Robot): Problem[] {
  return [...within(['game'], checkGame(game)), ...within(['robot'], checkRobot(game, robot))]
}

/** Takes the records of a whole event. */
const large = ({ endpoint: offered }: ReturnType<typeof endpoint>) => ({ endpoint: { ...offered, most: estimateBody } })

/** Whole documents in, every output of the model out; nothing is stored. */
export const computeRouter = router({
  travel: procedure
    .meta(endpoint('travel', 'Shortest way from a spot to a spot, and how long it takes', travelAnswer))
    .input(travelRequest)
    .output(travelAnswer)
    .mutation(({ input, ctx }) => {
      refuse(checkPair(input.game, input.robot))
      return ctx.pool.run('travel', input, ctx.signal)
    }),

  leg: procedure
    .meta(endpoint('leg', 'Distribution of one trip’s time, and its stages', legAnswer))
    .input(legRequest)
    .output(legAnswer)
    .mutation(({ input, ctx }) => {
      refuse(checkPair(input.game, input.robot))
      refuse(within(['leg'], checkLeg(input.game, input.robot, input.leg)))
      return ctx.pool.run('leg', input, ctx.signal)
    }),

  plan: procedure
    .meta(
      endpoint('plan', 'The best way to play one match: expected points, their distribution, the policy', planAnswer),
    )
    .input(planRequest)
    .output(planAnswer)
    .mutation(({ input, ctx }) => {
      refuse([...within(['game'], checkGame(input.game)), ...within(['option'], checkOption(input.game, input.option))])
      refuseHabit(input.option, ['option'])
      return planInParts(ctx.pool, input, ctx.signal)
    }),

  match: procedure
    .meta(endpoint('match', 'Three against three, played many times: chances to win, scores, waiting', matchAnswer))
    .input(matchRequest)
    .output(matchAnswer)
    .mutation(({ input, ctx }) => {
      longWorks.match.check(input)
      return longWorks.match.compute(ctx.pool, input, { signal: ctx.signal })
    }),

  lineup: procedure
    .meta(
      endpoint('lineup', 'Which of our robots does what: the best line-up and what the runner-up loses', lineupAnswer),
    )
    .input(lineupRequest)
    .output(lineupAnswer)
    .mutation(({ input, ctx }) => {
      longWorks.lineup.check(input)
      return longWorks.lineup.compute(ctx.pool, input, { signal: ctx.signal })
    }),

  season: procedure
    .meta(endpoint('season', 'A schedule of matches: chances and ranking points, with the error of both', seasonAnswer))
    .input(seasonRequest)
    .output(seasonAnswer)
    .mutation(({ input, ctx }) => {
      const { seasons = 10_000, replicates = 20_000, precision = 0.0035 } = input
      const request = { ...input, seasons, replicates, precision }
      refuse(checkSeason(request))
      return seasonInParts(ctx.pool, request, ctx.signal)
    }),

  compare: procedure
    .meta(endpoint('compare', 'Options side by side: chances, break-even, swing, belief', compareAnswer))
    .input(compareRequest)
    .output(compareAnswer)
    .mutation(({ input, ctx }) => {
      longWorks.compare.check(input)
      return longWorks.compare.compute(ctx.pool, input, { signal: ctx.signal })
    }),

  estimate: procedure
    .meta(
      large(
        endpoint(
          'estimate',
          'What is believed of all teams after what was recorded, and which records to doubt',
          estimateAnswer,
        ),
      ),
    )
    .input(estimateRequest)
    .output(estimateAnswer)
    .mutation(({ input, ctx }) => estimate(ctx, input)),

  forecast: procedure
    .meta(large(endpoint('forecast', 'A match of a schedule, its robots played as they were seen', matchAnswer)))
    .input(forecastRequest)
    .output(matchAnswer)
    .mutation(({ input, ctx }) => forecast(ctx, input)),

  field: procedure
    .meta(large(endpoint('field', 'What a design says of its trips beside records of its robot', fieldReport)))
    .input(fieldRequest)
    .output(fieldReport)
    .mutation(({ input, ctx }) => {
      refuse(checkPair(input.game, input.robot))
      const { only, ...request } = input
      return ctx.pool.run('field', { ...request, ...(only && { only }) }, ctx.signal)
    }),

  timing,
})
