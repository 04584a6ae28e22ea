/** A time that was seen to its end, or is known only to be longer. */
export interface Lasted {
  seconds: number
  /** False: cut off there. */
  ended: boolean
  weight: number
}

export interface Survival {
  /** Of each that ended, in the order given: its share of the distribution. Of one that was cut off: 0. */
  shares: number[]
  /** What lies beyond the longest that ended: 0 unless a longer one was cut off. */
  beyond: number
}

/**
 * The product-limit estimator, as the share that falls to each time: what was cut off hands its weight on to the longer ones. A time
 * that ended counts before one that was cut off at the same moment.
 *
 * Source: Kaplan & Meier, Journal of the American Statistical Association 53 (1958), 457–481.
 * @example kaplanMeier([{ seconds: 1, ended: true, weight: 1 }, { seconds: 2, ended: false, weight: 1 }]).beyond // 0.5
 */
export function kaplanMeier(all: readonly Lasted[]): Survival {
  const order = all.map((_, i) => i).sort((a, b) => all[a]!.seconds - all[b]!.seconds)
  const shares = all.map(() => 0)
  let atRisk = all.reduce((sum, { weight }) => sum + weight, 0)
  let left = 1
  for (let k = 0; k < order.length; ) {
    const { seconds } = all[order[k]!]!
    let until = k
    let [ended, gone] = [0, 0]
    for (; until < order.length && all[order[until]!]!.seconds === seconds; until++) {
      const one = all[order[until]!]!
      gone += one.weight
      if (one.ended) ended += one.weight
    }
    for (; k < until; k++) {
      const one = all[order[k]!]!
      if (one.ended) shares[order[k]!] = (left * one.weight) / atRisk
    }
    left *= 1 - ended / atRisk
    atRisk -= gone
  }
  return { shares, beyond: left < 1e-12 ? 0 : left }
}
