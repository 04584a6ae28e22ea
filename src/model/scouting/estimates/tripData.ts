import type { Weighted } from './weights.ts'

/** Logarithms of the times of one match. */
export interface TripMatch {
  weight: number
  /** Times that ended: how many, their mean, and squares about it. */
  count: number
  mean: number
  squares: number
  cut: { at: number; weight: number }[]
  /** Not times but what an earlier event said of the mean at median form: its precision. */
  told?: number
}

/** A mean logarithm as an earlier event told it. */
export const earlierTrips = (mean: number, told: number): TripMatch => {
  return { weight: 1, count: 0, mean, squares: 0, cut: [], told }
}

export type TripTeam = TripMatch[]

/** Times below this (s) are no trips but slips of a finger; a rest shorter than that says nothing. */
const shortest = 0.5

export function tripData(matches: readonly Weighted[]): TripTeam {
  return matches.flatMap(({ seen: { teleop }, weight }): TripMatch[] => {
    if (!teleop || weight <= 0) return []
    const ended = teleop.cycles.filter(({ seconds, ended }) => ended && seconds >= shortest)
    const cut = teleop.cycles.filter(({ seconds, ended }) => !ended && seconds >= shortest)
    const count = ended.reduce((sum, each) => sum + each.weight, 0)
    if (count === 0 && cut.length === 0) return []
    const mean = count > 0 ? ended.reduce((sum, each) => sum + each.weight * Math.log(each.seconds), 0) / count : 0
    const squares = ended.reduce((sum, each) => sum + each.weight * (Math.log(each.seconds) - mean) ** 2, 0)
    return [
      { weight, count, mean, squares, cut: cut.map((each) => ({ at: Math.log(each.seconds), weight: each.weight })) },
    ]
  })
}
