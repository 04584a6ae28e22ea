import { useQueries } from '@tanstack/react-query'
import { useMemo } from 'react'
import type { CompareRequest } from '../../../src/model/compare/types.ts'
import { type GoalPoints, pointsEach, withOverriddenPoints } from '../../../src/model/documents/overrides.ts'
import type { KeptOverride, Override } from '../../../src/model/documents/records.ts'
import type { Robot } from '../../../src/model/documents/types.ts'
import { placeOf } from '../../../src/model/field/places.ts'
import { autonomousOf } from '../../../src/model/plan/autonomous.ts'
import { askModel } from '../../worker/client.ts'
import type { Questions } from '../../worker/protocol.ts'
import { legRequests } from './legs.ts'

export interface OwnNumbers {
  /** The question with all overrides in it. */
  request: CompareRequest
  /** Those that change something, each with what is computed in its place. */
  kept: KeptOverride[]
  /** What a computed number is not known yet for: the question is not complete before. */
  pending: boolean
  /** Those that change nothing, because what they are about is not there. */
  idle: Override[]
}

const none: readonly Override[] = []

/** What is computed in place of an own number: asked of the model, or known at once. */
type Question =
  | { [K in 'likely' | 'legs' | 'travel']: { kind: K; ask: Questions[K]['ask'] } }['likely' | 'legs' | 'travel']
  | { kind: 'known'; ask: number }
  | { kind: 'goals'; ask: Questions['goals']['ask']; goal: string }
  | null

/**
 * Own numbers in place of computed ones. Overridden legs are in the question already; overridden points are put in here, as
 * soon as it is computed what they would be without. `robots`: as their documents have them.
 */
export function useOwnNumbers(
  base: CompareRequest,
  robots: readonly Robot[],
  overrides: readonly Override[] = none,
): OwnNumbers {
  const { game } = base
  const asked = overrides.map((override): Question => {
    if (override.kind === 'auto') {
      const option = base.options.find(({ id, auto }) => id === override.option && auto !== null)
      return option ? { kind: 'known', ask: autonomousOf(game, option, game.goals).expected } : null
    }
    if (override.kind === 'success') {
      const trip = robots.find(({ id }) => id === override.robot)?.finish[override.finish]
      return trip ? { kind: 'known', ask: trip.success } : null
    }
    if (override.kind === 'travel') {
      const robot = robots.find(({ id }) => id === override.robot)
      const { from, to } = override
      const found = robot && placeOf(game, from) && placeOf(game, to)
      return found ? { kind: 'travel', ask: { game, robot, from, to } } : null
    }
    if (override.kind === 'pieces') {
      const option = base.options.find(({ id }) => id === override.option)
      const known = option && game.goals.some(({ id }) => id === override.goal)
      return known ? { kind: 'goals', ask: { game, option }, goal: override.goal } : null
    }
    if (override.kind === 'points') {
      const option = base.options.find(({ id }) => id === override.option)
      return option ? { kind: 'likely', ask: { game, options: [option], inputs: [] } } : null
    }
    const robot = robots.find(({ id }) => id === override.robot)
    const legs = robot ? legRequests(game, robot, override.leg) : []
    return robot && legs.length > 0 ? { kind: 'legs', ask: { game, robot, legs } } : null
  })
  const answers = useQueries({
    queries: asked.map((question) => ({
      queryKey: ['own', question?.kind ?? null, question?.ask ?? null],
      queryFn: async ({ signal }: { signal: AbortSignal }): Promise<number | { [goal: string]: GoalPoints } | null> => {
        if (!question) return null
        if (question.kind === 'known') return question.ask
        if (question.kind === 'travel') return (await askModel('travel', question.ask, { signal, asked: true })).seconds
        if (question.kind === 'goals') return askModel('goals', question.ask, { signal, asked: true })
        if (question.kind === 'likely') return (await askModel('likely', question.ask, { signal, asked: true }))[0]!
        const reports = await askModel('legs', question.ask, { signal, asked: true })
        return reports.reduce((sum, { mean }) => sum + mean, 0) / reports.length
      },
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
      networkMode: 'always' as const,
    })),
    combine: (results) => results.map(({ data, isPending }) => ({ data, isPending })),
  })
  return useMemo(() => {
    const found = overrides.map((override, index) => ({ override, ...computedFor(override, answers[index]) }))
    const kept = found.flatMap(({ override, computed }) => (computed === null ? [] : [{ ...override, computed }]))
    const moves = Object.fromEntries(
      kept.flatMap((one) => {
        if ('points' in one) return [[one.id, one.points - one.computed] as const]
        const goals = found.find(({ override }) => override.id === one.id)?.goals
        const option = one.kind === 'pieces' && base.options.find(({ id }) => id === one.option)
        const here = one.kind === 'pieces' && goals?.[one.goal]
        if (!option || !here) return []
        return [[one.id, (one.pieces - one.computed) * pointsEach(game, option, one.goal, here)] as const]
      }),
    )
    return {
      request: { ...base, options: withOverriddenPoints(base.options, overrides, moves) },
      kept,
      pending: found.some(({ pending }) => pending),
      idle: found.flatMap(({ override, pending, computed }) => (!pending && computed === null ? [override] : [])),
    }
  }, [base, game, overrides, answers])
}

interface Answer {
  data: number | { [goal: string]: GoalPoints } | null | undefined
  isPending: boolean
}

/** What is computed in an override's place; null while it is not known, or where there is nothing. */
function computedFor(override: Override, answer: Answer | undefined) {
  const data = answer?.data ?? null
  const goals = typeof data === 'object' ? data : null
  const computed = goals && override.kind === 'pieces' ? (goals[override.goal]?.pieces ?? null) : data
  return { goals, computed: typeof computed === 'number' ? computed : null, pending: answer?.isPending ?? true }
}
