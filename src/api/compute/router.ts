import type * as z from 'zod'
import type { Game, Option, Robot } from '../../model/documents/index.ts'
import { checkGame, checkLeg, checkOption, checkRobot, within } from '../../model/documents/index.ts'
import type { Problem } from '../../model/errors.ts'
import type { LineupRequest } from '../../model/match/lineup/index.ts'
import type { MatchRequest } from '../../model/match/types.ts'
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
import { ApiError, refuse } from '../errors.ts'
import { procedure, router } from '../trpc.ts'
import { checkCompare } from './checkCompare.ts'
import { checkSeason } from './checkSeason.ts'
import { compareInField } from './compareInField.ts'
import { computeEndpoint as endpoint } from './endpoint.ts'
import { compareInParts } from './inParts.ts'
import { lineupInParts } from './lineupInParts.ts'
import { matchInParts } from './matchInParts.ts'
import { seasonInParts } from './seasonInParts.ts'
import { timing } from './timing.ts'
import { warningsOf } from './warnings.ts'

function checkPair(game: Game, robot: Robot): Problem[] {
  return [...within(['game'], checkGame(game)), ...within(['robot'], checkRobot(game, robot))]
}

function checkMatch({ game, ours, theirs }: MatchRequest): Problem[] {
  const options = (key: 'ours' | 'theirs', alliance: readonly Option[]) =>
    alliance.flatMap((option, index) => within([key, index], checkOption(game, option)))
  return [...within(['game'], checkGame(game)), ...options('ours', ours), ...options('theirs', theirs)]
}

const needsField =
  'Wins and ranking points depend on who else plays: say so in field, with two partners and three opponents'

const pointsOnly =
  'What inputs would change is computed for points alone: leave inputs, breakEven and belief out, or ask for objective "points"'

function checkLineup({ game, ours, theirs, weights, roles }: LineupRequest): Problem[] {
  const own = ours.flatMap((option, index) => within(['ours', index], checkOption(game, option)))
  const rivals = theirs.flatMap((setting, k) =>
    setting.flatMap((option, index) => within(['theirs', k, index], checkOption(game, option))),
  )
  const asked = roles.flatMap((choices, i) =>
    choices.flatMap((role, k) =>
      checkOption(game, { ...ours[i]!, role }).map((problem) => ({
        ...problem,
        path: problem.path[0] === 'role' ? ['roles', i, k, ...problem.path.slice(1)] : ['ours', i, ...problem.path],
      })),
    ),
  )
  if (weights && (weights.length !== theirs.length || !weights.some((weight) => weight > 0)))
    throw new ApiError({ code: 'malformed', message: oneEach, path: ['weights'] })
  return [...within(['game'], checkGame(game)), ...own, ...rivals, ...asked]
}

const oneEach = 'weights holds one number per setting of theirs, of which one at least is above 0'

/** A comparison asked for by wins or ranking points needs a field, and says nothing of inputs. */
function checkObjective({ objective = 'points', field, inputs, breakEven, belief }: Objective): void {
  if (objective === 'points') return
  if (!field) throw new ApiError({ code: 'malformed', message: needsField, path: ['field'] })
  const asked = breakEven !== undefined ? 'breakEven' : belief ? 'belief' : inputs?.length ? 'inputs' : null
  if (asked) throw new ApiError({ code: 'notOffered', message: pointsOnly, path: [asked] })
}

type Objective = z.infer<typeof compareRequest>

function checkField(game: Game, field: NonNullable<Objective['field']>): Problem[] {
  return (['partners', 'opponents'] as const).flatMap((key) =>
    field[key].flatMap((option, index) => within(['field', key, index], checkOption(game, option))),
  )
}

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
      return ctx.pool.run('plan', input, ctx.signal)
    }),

  match: procedure
    .meta(endpoint('match', 'Three against three, played many times: chances to win, scores, waiting', matchAnswer))
    .input(matchRequest)
    .output(matchAnswer)
    .mutation(async ({ input, ctx }) => {
      refuse(checkMatch(input))
      const { game, ours, theirs } = input
      const warnings = [...warningsOf(game, 'ours', ours), ...warningsOf(game, 'theirs', theirs)]
      return { ...(await matchInParts(ctx.pool, input, { signal: ctx.signal })), warnings }
    }),

  lineup: procedure
    .meta(
      endpoint('lineup', 'Which of our robots does what: the best line-up and what the runner-up loses', lineupAnswer),
    )
    .input(lineupRequest)
    .output(lineupAnswer)
    .mutation(async ({ input, ctx }) => {
      refuse(checkLineup(input))
      // Roles change nothing in autonomous, so that every line-up of ours has the same clashes.
      const warnings = warningsOf(input.game, 'ours', input.ours)
      return { ...(await lineupInParts(ctx.pool, input, ctx.signal)), warnings }
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
      const { game, options, inputs, breakEven, belief, field, level, replicates = 20_000, seed = 1 } = input
      const request = { game, options, inputs, breakEven, belief }
      checkObjective(input)
      refuse(checkCompare(request))
      if (!field) return compareInParts(ctx.pool, request, ctx.signal)
      refuse(checkField(game, field))
      const stated = { field, level, replicates, seed }
      return compareInField(ctx.pool, request, { stated, signal: ctx.signal })
    }),

  timing,
})
