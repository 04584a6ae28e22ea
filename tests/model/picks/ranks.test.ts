import { expect, test } from 'vitest'
import { type RatedTeam, type Rating, TraitsOf } from '../../../src/model/picks/scores/index.ts'
import { seedsOf, spreadsOf } from '../../../src/model/picks/seeds/index.ts'
import { Uniforms } from '../../../src/model/random/index.ts'
import { clusteredMean, normalQuantile, randomisedPit } from '../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game as field, lots, rated } from './field.ts'

// biome-ignore lint/suspicious/noThenProperty: the model's own name for the order of tie-breakers
const ranking = { win: 2, tie: 1, loss: 0, per: 'total' as const, then: ['score' as const] }
const game = { ...field, ranking }
const [teamCount, rounds, sd, doubt, draws] = [24, 10, 14, 0.2, 60]

/** A schedule of rounds in which each team plays once. */
function scheduleOf(teams: readonly string[], uniforms: Uniforms) {
  return Array.from({ length: rounds }, () => {
    const order = teams.map((team) => ({ team, at: uniforms.next() })).sort((a, b) => a.at - b.at)
    return Array.from({ length: teams.length / 6 }, (_, k) => {
      const six = order.slice(6 * k, 6 * k + 6).map(({ team }) => team)
      return { ours: six.slice(0, 3), theirs: six.slice(3) }
    })
  }).flat()
}

/** Where final ranks lay in what was said of them after half of the matches, the truth being one more draw of what is believed. */
function pitsOf(seed: number): number[] {
  const uniforms = new Uniforms(seed, [21])
  const normal = () => normalQuantile(uniforms.next())
  const pairs = Array.from({ length: teamCount }, (_, k) => {
    const level = 4 + 12 * uniforms.next()
    const brings = { pier: level, davit: 0.9 * uniforms.next() }
    const form = Array.from({ length: draws }, () => Math.exp(doubt * normal()))
    return {
      belief: rated(`t${k}`, { ...brings, form }),
      truth: rated(`t${k}`, { ...brings, form: [Math.exp(doubt * normal())] }),
    }
  })
  const belief = pairs.map((each) => each.belief)
  const truth = new Map(pairs.map((each) => [each.truth.team, each.truth]))
  const names = belief.map(({ team }) => team)
  const traits = new TraitsOf(game)
  const played = scheduleOf(names, uniforms).map((pairing) => {
    const ratings = (side: readonly string[]) => side.map((team) => (truth.get(team) as RatedTeam).rating as Rating)
    const [ours, theirs] = [pairing.ours, pairing.theirs].map((side) =>
      Math.round((traits.by(ratings(side)).expected[0] as number) + sd * normal()),
    ) as [number, number]
    return { pairing, ours, theirs }
  })
  const half = played.length / 2
  const sums = (matches: typeof played) => {
    const table = new Map(names.map((team) => [team, { team, played: 0, sums: [0, 0] as [number, number] }]))
    for (const { pairing, ours, theirs } of matches)
      for (const [side, own, other] of [
        [pairing.ours, ours, theirs],
        [pairing.theirs, theirs, ours],
      ] as const)
        for (const team of side) {
          const row = table.get(team)!
          row.played++
          row.sums[0] += own > other ? 2 : own === other ? 1 : 0
          row.sums[1] += own
        }
    return [...table.values()]
  }
  const coming = played.slice(half)
  const spreads = spreadsOf(
    game,
    belief,
    lots(belief, { pairings: coming.map(({ pairing }) => pairing), each: 200, sd, seed }),
  )
  const slots = (side: readonly string[]) => side.map((team) => ({ team, counts: true }))
  const { teams } = seedsOf(
    {
      game,
      standings: sums(played.slice(0, half)),
      matches: coming.map(({ pairing }, k) => ({
        id: `${k}`,
        ours: slots(pairing.ours),
        theirs: slots(pairing.theirs),
      })),
      seasons: 1200,
      seed,
    },
    spreads,
  )
  const final = sums(played)
    .map((row) => ({ ...row, lot: uniforms.next() }))
    .sort((a, b) => b.sums[0] - a.sums[0] || b.sums[1] - a.sums[1] || a.lot - b.lot)
  const place = new Map(final.map(({ team }, k) => [team, k]))
  return teams.map(({ team, ranks }) => {
    const came = place.get(team)!
    const below = ranks.slice(0, came).reduce((sum, chance) => sum + chance, 0)
    return randomisedPit(below, ranks[came]!, uniforms.next())
  })
}

test.runIf(inLongForm)(
  'over 200 generated events final ranks lie in their forecasts as evenly as chance has it, by whole events',
  { timeout: 3_600_000 },
  () => {
    const events = Number(process.env['GENERATED_EVENTS'] ?? 200)
    const pits = Array.from({ length: events }, (_, event) => pitsOf(event + 1))
    const classes = 5
    const found = Array.from(
      { length: classes },
      (_, k) =>
        clusteredMean(
          pits.flatMap((own, event) =>
            own.map((pit) => ({
              value: Number(Math.min(classes - 1, Math.floor(classes * pit)) === k),
              weight: 1,
              cluster: String(event),
            })),
          ),
        )!,
    )
    console.log(
      'randomised PIT of final ranks',
      events,
      'events',
      found.map(({ mean, standardError }) => [mean, standardError]),
    )
    // Five shares at once: 2.576 standard errors each are 95 % together at least (Bonferroni).
    for (const { mean, standardError } of found)
      expect(Math.abs(mean - 1 / classes), JSON.stringify(found)).toBeLessThan(2.576 * standardError!)
  },
)
