import type { Game } from '../../documents/types.ts'
import type { Course } from '../order/course.ts'
import { pickOrder, Strengths } from '../order/index.ts'
import { type Lot, type RatedTeam, Sibling } from '../scores/index.ts'
import { Selection, type SelectionRules } from '../selection/index.ts'
import { asCaptain } from '../usual.ts'
import type { Prospect } from './gradient.ts'
import { prospectsOf } from './prospects.ts'

export interface DecisionRequest {
  game: Game
  teams: readonly RatedTeam[]
  /** Simulated matches of some pairings. */
  lots: readonly Lot[]
  rules: SelectionRules
  /** All teams, best seeded first. */
  seeds: readonly string[]
  us: string
  /** By team: variance of what one match of it says about its expected points (points²). */
  perMatch: { readonly [team: string]: number }
  /** Whom we do not invite. */
  aside?: readonly string[]
}

export interface ComingDecision {
  /** Our seed as it is taken, from 1: as the last captain, where our rank is further down. */
  seed: number
  /** Whom we can have, best first. */
  prospects: Prospect[]
  /** Whom we can expect to be still free at our next turn. */
  replacement: string | null
}

/**
 * The decision that looks are to serve: whom we invite first when alliances are formed. Who will not be a captain by the present ranks
 * decides as if it became the last one: whether it will is for the matches to say.
 */
export function comingDecision(request: DecisionRequest): ComingDecision {
  const { game, teams, lots, rules, us, perMatch, aside = [] } = request
  const strengths = new Strengths(new Sibling(game, teams, lots))
  const seeds = asCaptain(request.seeds, { us, alliances: rules.alliances })
  const seed = seeds.indexOf(us) + 1
  let selection = Selection.begin(rules, seeds)
  // Who is on turn before us takes whoever is expected to bring most: looks at those are for nothing.
  const points = new Map(teams.map(({ team, rating }) => [team, meanOf(rating.points)]))
  for (;;) {
    const { turn, free } = selection.state
    if (!turn || turn.round > 1 || turn.alliance >= seed) break
    const others = free.filter((team) => team !== us)
    const [next] = others.toSorted((a, b) => (points.get(b) ?? 0) - (points.get(a) ?? 0))
    if (next === undefined) break
    selection = selection.take({ kind: 'accepts', team: next })
  }
  const { order, gains, courses } = pickOrder({ game, strengths, selection, us, aside: new Set(aside) })
  const prospects = prospectsOf(
    strengths,
    order.choices.map(({ team }, k) => ({
      team,
      gains: gains[k] as Float64Array,
      course: courses[k] as Course,
      perMatch: perMatch[team] ?? 0,
    })),
  )
  return { seed, prospects, replacement: order.replacement }
}

const meanOf = (values: Float64Array): number => values.reduce((sum, own) => sum + own, 0) / values.length
