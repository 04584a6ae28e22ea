import { normalCdf, normalDensity } from '../../scouting/statistics/index.ts'

/** What a decision chooses among: what is believed of each team's worth, and how far one more look at it errs. */
export interface Prospect {
  team: string
  /** Expected worth, and the variance of what is believed of it; in the unit of the decision, as chance to win. */
  mean: number
  variance: number
  /** Of one more look, in the same unit squared: what a match differs from the next by. */
  noise: number
}

/** ψ(z) = z Φ(z) + φ(z): by how much a standard normal number is expected to exceed −z, where it does. */
export const expectedRise = (z: number): number => Math.max(0, z * normalCdf(z) + normalDensity(z))

/**
 * What one look at each is worth: by how much the best choice after it is expected to be better than the best now,
 * σ̃ ψ(−|μ − c| / σ̃) with c the best of the others and σ̃ = v / √(v + s²) how far the look may move the mean. Beliefs of different
 * teams are taken as independent.
 *
 * Source: Frazier, Powell & Dayanik, A knowledge-gradient policy for sequential information collection, SIAM Journal on
 * Control and Optimization 47 (2008), 2410–2439.
 *
 * @returns by prospect, in their order
 */
export function knowledgeGradient(prospects: readonly Prospect[]): number[] {
  return prospects.map(({ mean, variance, noise }, k) => {
    const moves = variance > 0 ? variance / Math.sqrt(variance + noise) : 0
    if (!(moves > 0)) return 0
    let best = Number.NEGATIVE_INFINITY
    for (const [other, { mean: own }] of prospects.entries()) if (other !== k) best = Math.max(best, own)
    return Number.isFinite(best) ? moves * expectedRise(-Math.abs(mean - best) / moves) : 0
  })
}

/** What is believed after a look whose result is not known yet: the mean as before, the variance less. */
export const afterLook = (prospect: Prospect): Prospect => {
  const { variance, noise } = prospect
  return { ...prospect, variance: variance + noise > 0 ? (variance * noise) / (variance + noise) : 0 }
}
