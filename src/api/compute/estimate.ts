import type * as z from 'zod'
import { checkGame, within } from '../../model/documents/index.ts'
import type { Category, Doubt } from '../../model/scouting/doubts/index.ts'
import type { estimateAnswer, estimateRequest, forecastRequest } from '../contracts/compute/estimate.ts'
import { ApiError, refuse } from '../errors.ts'
import { draws as drawn } from '../estimates/robots.ts'
import type { Context } from '../trpc.ts'
import { matchInParts } from './matchInParts.ts'

type Told = z.infer<typeof estimateAnswer>['doubts'][number]

const named = (category: Category): string =>
  category.kind === 'pieces'
    ? `pieces at ${category.goal}`
    : category.kind === 'finishes'
      ? 'finish points'
      : 'points in autonomous'

/** Why, in a sentence for whoever reads the answer of a program. */
function why(doubt: Doubt): string {
  switch (doubt.kind) {
    case 'scout':
      return doubt.habit === 'swaps'
        ? `${doubt.scout} seems to take ${doubt.goals.join(' and ')} for each other`
        : `${doubt.scout} counts ${Math.abs(doubt.perRecord).toFixed(1)} pieces too ${doubt.perRecord > 0 ? 'few' : 'many'} at ${doubt.goal} in each record`
    case 'disagree':
      return `Records of one robot say ${doubt.low} and ${doubt.high} pieces at ${doubt.goal}`
    case 'swapped':
      return `The result fits once ${doubt.goals.join(' and ')} are taken for each other`
    case 'wrongRobot':
      return `The record fits team ${doubt.fits} better`
    case 'differs': {
      const [most] = doubt.evidence.toSorted((a, b) => Math.abs(b.sds) - Math.abs(a.sds))
      return most
        ? `Officials counted ${most.official} ${named(most.category)}, scouts ${most.scouted}`
        : 'Records and result differ'
    }
  }
}

const kinds = { differs: 'total', swapped: 'swap', wrongRobot: 'robot', scout: 'scout', disagree: 'agreement' } as const

function told(doubt: Doubt): Told {
  const one = (all: readonly string[]) => (all.length === 1 ? all[0] : undefined)
  const [team, observation] = [one(doubt.teams), one(doubt.records)]
  return {
    kind: kinds[doubt.kind],
    match: doubt.match,
    ...('alliance' in doubt && { alliance: doubt.alliance }),
    ...(team !== undefined && { team }),
    ...('scout' in doubt && { scout: doubt.scout }),
    ...(observation !== undefined && { observation }),
    size: doubt.size,
    why: why(doubt),
  }
}

/** An earlier estimate speaks of this game: what it names and the game does not have would count for nothing, and nobody would see. */
function checkPriors({ game, priors = {} }: z.infer<typeof estimateRequest>): void {
  const goals = new Set(game.goals.map(({ id }) => id))
  const finishes = new Set([...game.finishes.map(({ id }) => id), 'none'])
  for (const [team, { estimate }] of Object.entries(priors)) {
    const refuseOthers = (path: string[], ids: readonly string[], allowed: (id: string) => boolean, what: string) => {
      const wrong = ids.find((each) => !allowed(each))
      if (wrong === undefined) return
      const message = `${what}, got ${JSON.stringify(wrong)}`
      throw new ApiError({ code: 'malformed', message, path: ['priors', team, 'estimate', ...path, wrong] })
    }
    refuseOthers(['goals'], Object.keys(estimate.goals), (id) => goals.has(id), 'goals must be of the game')
    refuseOthers(
      ['finish'],
      Object.keys(estimate.finish),
      (id) => finishes.has(id),
      'finish must name those of the game',
    )
    const number = (n: string) => /^([1-9]\d?|100)$/.test(n)
    refuseOthers(
      ['trip', 'pieces'],
      Object.keys(estimate.trip?.pieces ?? {}),
      number,
      'pieces must be by number, 1 to 100',
    )
  }
}

export async function estimate(
  ctx: Pick<Context, 'pool' | 'signal'>,
  input: z.infer<typeof estimateRequest>,
): Promise<z.infer<typeof estimateAnswer>> {
  refuse(within(['game'], checkGame(input.game)))
  checkPriors(input)
  const { teams, prior, doubts } = await ctx.pool.run('estimateReport', input, ctx.signal)
  return { teams, prior, doubts: doubts.map(told) }
}

/** A match of the schedule, its robots played as they were seen. */
export async function forecast(ctx: Pick<Context, 'pool' | 'signal'>, input: z.infer<typeof forecastRequest>) {
  const { game, matches, observations, match: id, replicates, seed, level } = input
  refuse(within(['game'], checkGame(game)))
  const match = matches.find((each) => each.id === id)
  if (!match) {
    throw new ApiError({
      code: 'malformed',
      message: `match must be one of the schedule, got ${JSON.stringify(id)}`,
      path: ['match'],
    })
  }
  const teams = [...match.red, ...match.blue].map(({ team }) => team)
  const playing = matches.flatMap(({ red, blue }) => [...red, ...blue].map(({ team }) => team))
  const watched = observations.map((observation) => ({ observation, team: observation.team }))
  const all = [...new Set([...playing, ...watched.map(({ team }) => team)])].sort()
  const known = { game, teams: all, matches, watched, visits: [], changes: [] }
  const options = await ctx.pool.run('observed', { input: known, teams, draws: drawn }, ctx.signal)
  const request = { game, level, ours: options.slice(0, 3), theirs: options.slice(3), replicates, seed }
  return { ...(await matchInParts(ctx.pool, request, { signal: ctx.signal })), warnings: [] }
}
