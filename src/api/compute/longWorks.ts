import type * as z from 'zod'
import type { Game, Option } from '../../model/documents/index.ts'
import { checkGame, checkOption, within } from '../../model/documents/index.ts'
import type { Problem } from '../../model/errors.ts'
import type { LineupRequest } from '../../model/match/lineup/index.ts'
import type { MatchRequest } from '../../model/match/types.ts'
import type { compareRequest } from '../contracts/index.ts'
import { ApiError, refuse } from '../errors.ts'
import { checkCompare } from './checkCompare.ts'
import { refuseHabit } from './checkHabit.ts'
import { compareInField } from './compareInField.ts'
import { compareInParts } from './inParts.ts'
import { lineupInParts } from './lineupInParts.ts'
import { matchInParts } from './matchInParts.ts'
import type { Part } from './part.ts'
import type { Pool } from './pool.ts'
import { warningsOf } from './warnings.ts'

type CompareInput = z.infer<typeof compareRequest>

/**
 * What takes long and is computed in parts: asked for at once, or as a job. `check` throws what is wrong with a request before
 * anything is computed.
 */
export const longWorks = {
  match: {
    check: (request: MatchRequest) => refuse(problemsOfMatch(request)),
    compute: async (pool: Pool, request: MatchRequest, part: Part) => {
      const { game, ours, theirs } = request
      const warnings = [...warningsOf(game, 'ours', ours), ...warningsOf(game, 'theirs', theirs)]
      return { ...(await matchInParts(pool, request, part)), warnings }
    },
  },
  lineup: {
    check: (request: LineupRequest) => refuse(problemsOfLineup(request)),
    compute: async (pool: Pool, request: LineupRequest, part: Part) => {
      // Roles change nothing in autonomous, so that every line-up of ours has the same clashes.
      const warnings = warningsOf(request.game, 'ours', request.ours)
      return { ...(await lineupInParts(pool, request, part)), warnings }
    },
  },
  compare: {
    check: (input: CompareInput) => {
      checkObjective(input)
      refuse(checkCompare(pointsOf(input)))
      for (const [index, option] of input.options.entries()) refuseHabit(option, ['options', index])
      if (input.field) refuse(checkField(input.game, input.field))
    },
    compute: (pool: Pool, input: CompareInput, part: Part) => {
      const { field, level, replicates = 20_000, seed = 1 } = input
      if (!field) return compareInParts(pool, pointsOf(input), part)
      return compareInField(pool, pointsOf(input), { stated: { field, level, replicates, seed }, part })
    },
  },
}

const pointsOf = ({ game, options, inputs, breakEven, belief }: CompareInput) => ({
  game,
  options,
  inputs,
  breakEven,
  belief,
})

function problemsOfMatch({ game, ours, theirs }: MatchRequest): Problem[] {
  const options = (key: 'ours' | 'theirs', alliance: readonly Option[]) =>
    alliance.flatMap((option, index) => within([key, index], checkOption(game, option)))
  return [...within(['game'], checkGame(game)), ...options('ours', ours), ...options('theirs', theirs)]
}

const needsField =
  'Wins and ranking points depend on who else plays: say so in field, with two partners and three opponents'

const pointsOnly =
  'What inputs would change is computed for points alone: leave inputs, breakEven and belief out, or ask for objective "points"'

function problemsOfLineup({ game, ours, theirs, weights, roles }: LineupRequest): Problem[] {
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

type Objective = CompareInput

function checkField(game: Game, field: NonNullable<Objective['field']>): Problem[] {
  return (['partners', 'opponents'] as const).flatMap((key) =>
    field[key].flatMap((option, index) => within(['field', key, index], checkOption(game, option))),
  )
}
