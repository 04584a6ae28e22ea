import { describe, expect, it, test } from 'vitest'
import type { Game, Option } from '../../src/model/documents/types.ts'
import { simulate } from '../../src/model/match/index.ts'
import { plan } from '../../src/model/plan/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { cumulativeDistance, game, optionNamed } from '../model/reference.ts'

/** The reference's game where nobody is in anybody's way: sources without end, and nothing that only a match pays. */
const roomy: Game = {
  ...game,
  sources: game.sources.map((source) => ({ ...source, stock: null, restock: null })),
  sets: [],
  bonuses: [],
}

/** A robot that always comes, never stops or fouls, always is at its usual form, and leaves the hold goal alone. */
function steady(id: string): Option {
  const option = optionNamed(id)
  const robot = {
    ...option.robot,
    form: { spread: 1 },
    reliability: { absent: 0, stops: 0 },
    fouls: { minorPerMatch: 0, majorPerMatch: 0 },
  }
  const auto = option.auto === 'ship-pier' ? null : option.auto
  return { ...option, robot, auto, role: { ...option.role, goals: ['pier', 'gantry'] } }
}

const away = (option: Option): Option => ({
  ...option,
  auto: null,
  robot: { ...option.robot, reliability: { absent: 1, stops: 0 } },
})

/** One robot in each alliance, the other seats empty. */
const alone = (ours: Option, theirs: Option, replicates: number) =>
  simulate({
    game: roomy,
    ours: [away(ours), ours, away(ours)],
    theirs: [away(theirs), away(theirs), theirs],
    replicates,
    seed: 51,
    checked: true,
  })

describe('a match without contention is the plan of section 4, played', () => {
  const pairs = [
    ['cormorant-best', 'petrel-best'],
    ['dunlin-guess', 'gannet-best'],
    ['cormorant-always', 'petrel-plain'],
  ] as const

  it.each(inLongForm ? pairs : pairs.slice(0, 2))('%s and %s score as their exact distributions say', (one, other) => {
    const replicates = 20_000
    const options = [steady(one), steady(other)] as const
    const { distributions } = alone(...options, replicates)
    /**
     * Kolmogorov's limit: a sample's cdf stays within 1.9495/√n in 99.9 % of samples (Kolmogorov 1933; tabulated by Smirnov,
     * Ann. Math. Statist. 19:279–281, 1948; value recomputed below). For whole points it stays within even more often.
     */
    const limit = 1.9495
    const beyond = 2 * [1, 2, 3].reduce((sum, k) => sum - (-1) ** k * Math.exp(-2 * (k * limit) ** 2), 0)
    expect(beyond).toBeCloseTo(0.001, 5)
    for (const [k, option] of options.entries()) {
      const played = k === 0 ? distributions.ours : distributions.theirs
      const exact = plan(roomy, option).distribution
      expect(cumulativeDistance(played, exact)).toBeLessThan(limit / Math.sqrt(replicates))
      // The test would tell a point more from none.
      const shifted = exact.map(([points, p]): [number, number] => [points + 1, p])
      expect(cumulativeDistance(played, shifted)).toBeGreaterThan(limit / Math.sqrt(replicates))
    }
  })

  test.runIf(inLongForm).each(pairs)(
    '%s and %s score on average what their plans expect, within 0.1 points',
    { timeout: 300_000 },
    (one, other) => {
      const options = [steady(one), steady(other)] as const
      const { score } = alone(...options, 200_000)
      expect(Math.abs(score.ours.mean - plan(roomy, options[0]).expected.total)).toBeLessThan(0.1)
      expect(Math.abs(score.theirs.mean - plan(roomy, options[1]).expected.total)).toBeLessThan(0.1)
    },
  )
})

describe('alliances that are alike', () => {
  const games = [
    ['with everything that robots do to each other', game],
    ['where sources, sets and bonuses leave them apart', roomy],
  ] as const

  it.each(inLongForm ? games : games.slice(0, 1))('win as often as they lose, %s', (_, played) => {
    const alliance = ['cormorant-best', 'petrel-best', 'gannet-keeper'].map(optionNamed)
    const { win, tie, loss, margin, rankingPoints } = simulate({
      game: played,
      ours: alliance,
      theirs: alliance,
      replicates: 20_000,
      seed: 52,
    })
    // Of two equal alliances a match counts 1 or 0 with the chance of no tie, and ½ otherwise.
    const error = Math.sqrt((win.probability + loss.probability) / 4 / 20_000)
    expect(Math.abs(win.probability + tie.probability / 2 - 0.5)).toBeLessThan(4 * error)
    expect(Math.abs(margin.mean)).toBeLessThan(4 * margin.standardError)
    const apart = rankingPoints.ours.mean - rankingPoints.theirs.mean
    expect(Math.abs(apart)).toBeLessThan(
      4 * Math.hypot(rankingPoints.ours.standardError, rankingPoints.theirs.standardError),
    )
  })
})
