import type { Course } from '../order/course.ts'
import type { Strengths } from '../order/strength.ts'
import type { Rating, Traits } from '../scores/index.ts'
import type { Prospect } from './gradient.ts'

/** A candidate of the coming decision. */
export interface Candidate {
  team: string
  /** Chance to win with it less that with the replacement, by common draw. */
  gains: Float64Array
  /** How the selection ends with it. */
  course: Course
  /** Variance of what one match of it says about its expected points (points²). */
  perMatch: number
}

/**
 * Candidates as prospects in chance to win: the mean gain, how far it is not known because the candidate is not, everybody else at
 * their mean, and how far one more look errs: as many times that as a match differs in points from what is expected of it.
 */
export function prospectsOf(strengths: Strengths, candidates: readonly Candidate[]): Prospect[] {
  const steady = new Steady(strengths)
  return candidates.map(({ team, gains, course, perMatch }) => {
    const variance = varianceOf(steady.chances(course, team))
    const points = varianceOf(strengths.sibling.rating(team).points)
    return { team, mean: meanOf(gains), variance, noise: points > 0 ? (variance * perMatch) / points : 0 }
  })
}

/** Alliances of which one team varies by its draws and all others are at their mean. */
class Steady {
  private readonly strengths: Strengths
  private readonly means = new Map<string, Rating>()
  private readonly others = new Map<string, Traits>()

  constructor(strengths: Strengths) {
    this.strengths = strengths
  }

  /** Chance to win by the team's draws, all opponents as likely; 0 variance where it would not play. */
  chances({ ours, others }: Course, team: string): Float64Array {
    const { sibling } = this.strengths
    const rating = (each: string) => (each === team ? sibling.rating(each) : this.mean(each))
    const own = sibling.traits.by(this.strengths.of(ours).teams.map(rating))
    const rows = others.map((each) => sibling.chances(own, this.steady(each)))
    return (rows[0] ?? new Float64Array(1)).map(
      (_, d) => rows.reduce((sum, row) => sum + (row[d] as number), 0) / rows.length,
    )
  }

  private steady(members: readonly string[]): Traits {
    const key = members.join('\n')
    const before = this.others.get(key)
    if (before) return before
    const { teams } = this.strengths.of(members)
    const made = this.strengths.sibling.traits.by(teams.map((each) => this.mean(each)))
    this.others.set(key, made)
    return made
  }

  /** As many draws as ever, all of them the mean. */
  private mean(team: string): Rating {
    const before = this.means.get(team)
    if (before) return before
    const { points, autonomous, goals, finishing, pieces, hits, finishes } = this.strengths.sibling.rating(team)
    const flat = (values: Float64Array) => new Float64Array(values.length).fill(meanOf(values))
    const made: Rating = {
      points: flat(points),
      autonomous: flat(autonomous),
      goals: goals.map(flat),
      finishing: flat(finishing),
      pieces: pieces.map(flat),
      hits: hits.map(flat),
      finishes: finishes.map(flat),
    }
    this.means.set(team, made)
    return made
  }
}

const meanOf = (values: Float64Array): number => values.reduce((sum, own) => sum + own, 0) / values.length

function varianceOf(values: Float64Array): number {
  const mean = meanOf(values)
  return values.reduce((sum, own) => sum + (own - mean) ** 2, 0) / values.length
}
