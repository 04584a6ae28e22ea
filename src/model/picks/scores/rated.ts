import type { Game } from '../../documents/types.ts'
import { type EventEstimates, type TeamDraws, worthOf } from '../../scouting/estimates/index.ts'
import { observedRobot } from '../../scouting/observed/index.ts'
import type { RatedTeam, Rating } from './types.ts'

/** Common draws of an order, and draws that a robot of simulated matches has. */
export const commonDraws = 400
export const robotDraws = 64

export interface RateRequest {
  team: string
  draws?: number
  /** Draws of the robot. */
  robot?: number
}

/** What is expected of teams, by common draw; without the robots that stand for them in simulated matches. */
export function ratingsOf(event: EventEstimates, teams: readonly string[], draws = commonDraws): Rating[] {
  const { game, holdSeconds = {} } = event.input
  return teams.map((team) => ratingOf(game, event.draws(team), { holdSeconds, draws }))
}

/**
 * A team from its rating and its robot, whose draws are every so-many-th of the rating's: both were taken evenly from the same
 * draws of the estimates.
 * @throws Error where the rating's draws are no multiple of the robot's
 */
export function ratedFrom(team: string, { rating, option }: Pick<RatedTeam, 'rating' | 'option'>): RatedTeam {
  const [all, own] = [rating.points.length, option.robot.habit?.draws?.length ?? 0]
  if (own === 0 || all % own !== 0) throw new Error(`${team}: ${all} draws are no multiple of its robot's ${own}`)
  const thinned = (values: Float64Array) => values.filter((_, d) => d % (all / own) === 0)
  const { points, autonomous, goals, finishing, pieces, hits, finishes } = rating
  return {
    team,
    rating,
    option,
    met: {
      points: thinned(points),
      autonomous: thinned(autonomous),
      goals: goals.map(thinned),
      finishing: thinned(finishing),
      pieces: pieces.map(thinned),
      hits: hits.map(thinned),
      finishes: finishes.map(thinned),
    },
  }
}

/** A team by what is estimated of it. */
export function ratedTeam(
  event: EventEstimates,
  { team, draws = commonDraws, robot = robotDraws }: RateRequest,
): RatedTeam {
  const { game, holdSeconds = {} } = event.input
  const of = event.draws(team)
  return {
    team,
    rating: ratingOf(game, of, { holdSeconds, draws }),
    option: observedRobot(event, team, { draws: robot }).option,
    met: ratingOf(game, of, { holdSeconds, draws: robot }),
  }
}

/** Every so-many-th of the estimates' draws, as an observed robot takes them. */
export function ratingOf(
  game: Game,
  of: TeamDraws,
  { holdSeconds, draws }: { holdSeconds: { [goal: string]: number }; draws: number },
): Rating {
  const { attempts, goals, finish, leaves, absent, stops } = of
  const step = attempts.length / draws
  const each = (value: (d: number) => number) =>
    Float64Array.from({ length: draws }, (_, k) => value(Math.floor(k * step)))
  const comes = (d: number) => 1 - (absent[d] as number)
  const plays = (d: number) => comes(d) * (1 - (stops[d] as number) / 2)
  const placed = game.goals.map((_, k) => {
    const [share, hit] = [goals[k] as Float64Array, of.success(k)]
    return each((d) => plays(d) * (attempts[d] as number) * (share[d] as number) * (hit[d] as number))
  })
  const early = game.goals.map((_, k) => each((d) => comes(d) * (of.autonomous[k]?.[d] as number)))
  const finishes = game.finishes.map((_, k) =>
    each((d) => comes(d) * (1 - (stops[d] as number)) * (finish[k]?.[d] as number)),
  )
  const moved = each((d) => comes(d) * (leaves[d] as number) * (game.leave?.points ?? 0))
  const sum = (parts: readonly Float64Array[], worth: (k: number) => number) =>
    Float64Array.from({ length: draws }, (_, d) =>
      parts.reduce((total, part, k) => total + worth(k) * (part[d] as number), 0),
    )
  const inAuto = (k: number) => {
    const award = game.goals[k]?.award
    return award?.kind === 'each' ? award.auto : 0
  }
  const autonomous = sum([moved, ...early], (k) => (k === 0 ? 1 : inAuto(k - 1)))
  const points = game.goals.map((goal, k) => {
    const worth = worthOf(goal, holdSeconds)
    return (placed[k] as Float64Array).map((pieces) => worth * pieces)
  })
  const finishing = sum(finishes, (k) => game.finishes[k]?.points ?? 0)
  return {
    points: sum([autonomous, ...points, finishing], () => 1),
    autonomous,
    goals: points,
    finishing,
    pieces: placed.map((own, k) => own.map((pieces, d) => pieces + (early[k]?.[d] as number))),
    hits: game.goals.map((_, k) => each((d) => of.success(k)[d] as number)),
    finishes,
  }
}
