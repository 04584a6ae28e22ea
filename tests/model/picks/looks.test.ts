import { describe, expect, it } from 'vitest'
import {
  afterLook,
  expectedRise,
  knowledgeGradient,
  type Prospect,
  whereToLook,
} from '../../../src/model/picks/looks/index.ts'
import { normalDensity } from '../../../src/model/scouting/statistics/index.ts'

const prospect = (team: string, mean: number, sd: number, noise: number): Prospect => ({
  team,
  mean,
  variance: sd * sd,
  noise: noise * noise,
})

/** E max(best other, new mean) − max now, with the new mean normal about the old one; by the midpoint rule over ±9 sd. */
function byQuadrature(prospects: readonly Prospect[], k: number): number {
  const { mean, variance, noise } = prospects[k] as Prospect
  const others = Math.max(...prospects.flatMap((each, j) => (j === k ? [] : [each.mean])))
  const now = Math.max(mean, others)
  // The variance of the new mean is what the belief loses: v − v s² / (v + s²).
  const spread = Math.sqrt(variance - (variance * noise) / (variance + noise))
  const steps = 200_000
  let sum = 0
  for (let i = 0; i < steps; i++) {
    const z = -9 + (18 * (i + 0.5)) / steps
    sum += (Math.max(others, mean + spread * z) - now) * normalDensity(z) * (18 / steps)
  }
  return sum
}

describe('what a look is worth', () => {
  it('is by hand what the formula says', () => {
    // Two that are level: σ̃ φ(0), with v = 9 and s² = 16: σ̃ = 9 / 5, φ(0) = 0.3989423.
    expect(knowledgeGradient([prospect('a', 5, 3, 4), prospect('b', 5, 0, 1)])).toEqual([
      expect.closeTo(1.8 * 0.39894228, 7),
      0,
    ])
    // ψ(−1) = φ(1) − (1 − Φ(1)) = 0.2419707 − 0.1586553.
    expect(expectedRise(-1)).toBeCloseTo(0.0833154, 6)
  })

  it('is how much better the choice is expected to be after it, by brute force', () => {
    const prospects = [
      prospect('a', 0.6, 0.1, 0.2),
      prospect('b', 0.55, 0.2, 0.1),
      prospect('c', 0.3, 0.05, 0.3),
      prospect('d', 0.58, 0.02, 0.2),
    ]
    const gradient = knowledgeGradient(prospects)
    for (const [k, own] of gradient.entries()) expect(Math.abs(own - byQuadrature(prospects, k))).toBeLessThan(1e-8)
    // Most is learnt of who is unsure and near the best, not of the best, and not of who is far off.
    expect(gradient.indexOf(Math.max(...gradient))).toBe(1)
  })

  it('is nothing where there is no choice, or nothing to learn', () => {
    expect(knowledgeGradient([prospect('a', 1, 1, 1)])).toEqual([0])
    expect(knowledgeGradient([prospect('a', 1, 0, 0), prospect('b', 1, 0, 0)])).toEqual([0, 0])
  })

  it('leaves less to learn: variances add as precisions do', () => {
    // 1 / (1/9 + 1/16) = 144 / 25.
    expect(afterLook(prospect('a', 2, 3, 4)).variance).toBeCloseTo(5.76, 12)
    expect(afterLook(afterLook(prospect('a', 2, 3, 4))).variance).toBeCloseTo(1 / (1 / 9 + 2 / 16), 12)
  })
})

describe('where to look next', () => {
  const matches = [
    { id: 'm1', teams: ['a', 'b'], pause: false },
    { id: 'm2', teams: ['a', 'c'], pause: false },
    { id: 'm3', teams: ['b', 'c'], pause: false },
    { id: 'm4', teams: ['a', 'b'], pause: true },
  ]
  const prospects = [prospect('a', 0.5, 0.2, 0.2), prospect('b', 0.5, 0.19, 0.2), prospect('c', 0.3, 0.1, 0.2)]
  const breaks = { longest: 9, rest: 1 }
  const said = (plan: ReturnType<typeof whereToLook>) =>
    plan.looks.map(({ match, team, person }) => `${match} ${team} ${person}`)

  it('takes the look that is worth most, then what is worth most after it', () => {
    const plan = whereToLook({ prospects, matches, people: [{ person: 'Mara' }], ...breaks })
    expect(plan.teams.map(({ team }) => team)).toEqual(['a', 'b', 'c'])
    // a first, in its first match; then b is the one that is less known. m2 and m4 are what is left for a, c and b.
    expect(said(plan)).toEqual(['m1 a Mara', 'm2 a Mara', 'm3 b Mara', 'm4 b Mara'])
    const after = [afterLook(prospects[0] as Prospect), prospects[1] as Prospect, prospects[2] as Prospect]
    expect(plan.looks[2]?.worth).toBeCloseTo(knowledgeGradient(after)[1] as number, 12)
    // Nobody watches two robots at once.
    expect(new Set(plan.looks.map(({ match }) => match)).size).toBe(plan.looks.length)
  })

  it('keeps breaks, counts what people watch anyway, and pauses in which everybody rests', () => {
    const one = whereToLook({ prospects, matches, people: [{ person: 'Mara' }], longest: 1, rest: 1 })
    expect(one.looks.map(({ match }) => match)).toEqual(['m1', 'm3', 'm4'])
    const busy = [
      { person: 'Mara', busy: new Set(['m1', 'm2']) },
      { person: 'Ole', busy: new Set(['m3', 'm4']) },
    ]
    const two = whereToLook({ prospects, matches, people: busy, longest: 2, rest: 1 })
    // Ole can not take m2, too: with m3 that would be three without a break.
    expect(said(two)).toEqual(['m1 a Ole', 'm4 b Mara'])
  })

  it('knows of looks that are planned already', () => {
    const planned = ['m1', 'm2', 'm4'].map((match) => ({ match, team: 'a' }))
    const plan = whereToLook({ prospects, matches, people: [{ person: 'Mara' }], planned, ...breaks })
    expect(plan.teams[0]?.team).toBe('b')
    expect(said(plan)).toEqual(['m1 b Mara', 'm2 c Mara', 'm3 b Mara', 'm4 b Mara'])
  })
})
