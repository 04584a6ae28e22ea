import type { Game } from '../../documents/types.ts'
import type { Rating } from '../scores/index.ts'
import { groups } from '../scores/sibling.ts'
import type { Selection } from '../selection/index.ts'
import { believedOf, largerIn } from './believed.ts'
import { type Course, type CourseOf, candidatesOf, courseWith, ownOf, replacementFor } from './course.ts'
import { answersOf, needsOf } from './needs.ts'
import type { Strengths } from './strength.ts'
import type { Choice, PickOrder } from './types.ts'

export interface OrderRequest {
  game: Game
  /** Kept from order to order: most alliances come again. */
  strengths: Strengths
  selection: Selection
  us: string
  /** The order before the last pick: everybody goes on by it, which saves working a rough one out. */
  since?: Pick<WorkedOrder, 'worth'>
  /** Whom we do not invite, for reasons that no number knows. */
  aside?: ReadonlySet<string>
}

/** Draws that errors are estimated from: one of so many, and some 25 where there are fewer. */
const errorEvery = (draws: number) => Math.max(1, Math.min(16, Math.floor(draws / 25)))
/** And that everybody's rough gains are. */
const roughEvery = 8

/** An order with what it was worked out from, so that a simulation can go on with it. */
export interface WorkedOrder {
  order: PickOrder
  /** What everybody's order goes by: rough gains, whoever is set aside among them. */
  worth: ReadonlyMap<string, number>
  /** By choice: the gain by common draw, and how the selection ends with it. */
  gains: Float64Array[]
  courses: Course[]
  /** With the replacement. */
  base: Course | null
}

/**
 * Whom to invite first: by how much more likely our completed alliance wins with a team than with the one that we can expect to
 * be still free at our next turn. Everybody else invites by the same order, which is therefore worked out twice: first from
 * expected points, then from what came of it.
 */
export function pickOrder(request: OrderRequest): WorkedOrder {
  const { strengths, selection, us, aside = new Set<string>() } = request
  const worth = request.since?.worth ?? roughWorth(request)
  return told(request, { worth, found: gainsBy({ selection, us, aside, order: placesBy(worth) }, strengths) })
}

/** What everybody's order goes by: rough gains, where everybody invites by expected points. */
export function roughWorth(request: Pick<OrderRequest, 'strengths' | 'selection' | 'us'>): ReadonlyMap<string, number> {
  const points = pointsOf(request)
  const rough = { ...request, aside: new Set<string>(), order: placesBy(points) }
  return filled(gainsBy(rough, request.strengths, { every: roughEvery }).means, points)
}

/** An order for the first moment: everybody invites by expected points. Few draws in its strengths are enough. */
export function roughOrder(request: OrderRequest): PickOrder {
  const { strengths, aside = new Set<string>() } = request
  const worth = pointsOf(request)
  const found = gainsBy({ ...request, aside, order: placesBy(worth) }, strengths)
  return told(request, { worth, found }).order
}

const pointsOf = ({ strengths: { sibling }, selection }: Pick<OrderRequest, 'strengths' | 'selection'>) =>
  new Map(selection.state.seeds.map((team) => [team, meanOf(sibling.rating(team).points)]))

/** Whoever is no choice of ours is worth as much as the choice with the nearest expected points. */
function filled(gains: ReadonlyMap<string, number>, points: ReadonlyMap<string, number>): Map<string, number> {
  const known = [...gains].map(([team, gain]) => ({ gain, points: points.get(team) as number }))
  return new Map(
    [...points].map(([team, own]) => {
      const near = known.reduce<(typeof known)[number] | null>(
        (best, each) => (best && Math.abs(best.points - own) <= Math.abs(each.points - own) ? best : each),
        null,
      )
      // Of equals whoever brings more points is first.
      return [team, (gains.get(team) ?? near?.gain ?? 0) + 1e-7 * own]
    }),
  )
}

interface Found {
  replacement: string | null
  replacementFree: boolean
  base: Course | null
  /** By candidate, best first. */
  rows: { team: string; course: Course; wins: Float64Array; gains: Float64Array }[]
  means: ReadonlyMap<string, number>
}

function gainsBy(of: CourseOf, strengths: Strengths, sampled = {}): Found {
  const free = replacementFor(of)
  const replacement = free ?? lastOf(of)
  const base = replacement === null ? null : courseWith(of, replacement)
  const by = base ? strengths.against(base.ours, base.others, sampled) : null
  const rows = candidatesOf(of).flatMap((team) => {
    const course = team === replacement && base ? base : courseWith(of, team)
    // Who becomes captain before our turn can not be had.
    if (!course.ours.includes(team)) return []
    const wins = strengths.against(course.ours, course.others, sampled)
    return [{ team, course, wins, gains: wins.map((win, d) => win - (by?.[d] ?? 0)) }]
  })
  const means = new Map(rows.map(({ team, gains }) => [team, meanOf(gains)]))
  rows.sort((a, b) => {
    const gap = (means.get(b.team) as number) - (means.get(a.team) as number)
    return gap || (of.order.get(a.team) as number) - (of.order.get(b.team) as number)
  })
  return { replacement, replacementFree: free !== null, base, rows, means }
}

/** Where every team will be taken, gains are against whoever is taken last among those that we can have. */
function lastOf(of: CourseOf): string | null {
  const place = (team: string) => of.order.get(team) as number
  const last = candidatesOf(of).sort((a, b) => place(b) - place(a))
  return last.find((team) => courseWith(of, team).ours.includes(team)) ?? null
}

function told(
  { game, strengths, selection, us }: OrderRequest,
  { worth, found }: { worth: ReadonlyMap<string, number>; found: Found },
): WorkedOrder {
  const { sibling } = strengths
  const alliance = ownOf(selection.state, us)
  const ratings = (teams: readonly string[]): Rating[] => teams.map((team) => sibling.rating(team))
  const opponents = (found.base ?? found.rows[0]?.course)?.others ?? []
  const needs = needsOf(game, ratings(alliance), ratings(opponents.flatMap((each) => strengths.of(each).teams)))
  const errors = errorsOf(found, strengths)
  const choices = found.rows.map(({ team, course, wins, gains }, k): Choice => {
    const next = found.rows[k + 1]
    return {
      team,
      win: believedOf(wins),
      gain: believedOf(gains),
      error: errors[k] as number,
      better: next ? largerIn(gains, next.gains) : null,
      alliance: course.ours,
      answers: answersOf(game, needs, { team: sibling.rating(team), ours: ratings(alliance) }),
      simulated: 0,
    }
  })
  return {
    order: {
      ...{ us, alliance, choices, needs, opponents },
      replacement: found.replacement,
      replacementFree: found.replacementFree,
    },
    worth,
    gains: found.rows.map(({ gains }) => gains),
    courses: found.rows.map(({ course }) => course),
    base: found.base,
  }
}

/**
 * Standard errors of mean gains by the luck of the simulated matches: a tenth of them left out in turn.
 * Source: Efron & Tibshirani, An Introduction to the Bootstrap (1993), chapter 11 (the jackknife).
 */
function errorsOf({ base, rows }: Found, strengths: Strengths): number[] {
  const mean = ({ ours, others }: Course, without: number) =>
    meanOf(strengths.against(ours, others, { without, every: errorEvery(strengths.sibling.draws) }))
  const bases = Array.from({ length: groups }, (_, group) => (base ? mean(base, group) : 0))
  return rows.map(({ course }) => {
    const gains = bases.map((own, group) => mean(course, group) - own)
    const middle = gains.reduce((sum, gain) => sum + gain, 0) / groups
    return Math.sqrt(((groups - 1) / groups) * gains.reduce((sum, gain) => sum + (gain - middle) ** 2, 0))
  })
}

const meanOf = (values: Float64Array): number => values.reduce((sum, own) => sum + own, 0) / values.length

/** Places from 0, the largest number first; of equals the one that was first. */
function placesBy(values: ReadonlyMap<string, number>): Map<string, number> {
  return new Map([...values].sort(([, a], [, b]) => b - a).map(([team], place) => [team, place]))
}
