import { expect, test } from 'vitest'
import { comingDecision, whereToLook } from '../../../src/model/picks/looks/index.ts'
import { pickOrder } from '../../../src/model/picks/order/index.ts'
import { type RatedTeam, samplePairings } from '../../../src/model/picks/scores/index.ts'
import { allianceOf, bestOf, follow, membersOf, onTurn, Selection } from '../../../src/model/picks/selection/index.ts'
import { Moments, Uniforms } from '../../../src/model/random/index.ts'
import { normalQuantile } from '../../../src/model/scouting/statistics/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { game, lots, rated } from './field.ts'
import { draws, eventOf, rules, strengthsOf } from './generated.ts'

/** Of a match, of what is expected of a robot. */
const luck = 0.35
const matchesToCome = 12

const meanOf = ({ rating }: RatedTeam) => rating.points.reduce((sum, own) => sum + own, 0) / rating.points.length

/** A belief after some matches of a robot: its draws by how likely they make what was seen, drawn anew as many times. */
function after(belief: RatedTeam, seen: readonly { points: number; sd: number }[], uniforms: Uniforms): RatedTeam {
  if (seen.length === 0) return belief
  const { points, pieces, finishes } = belief.rating
  const logs = Array.from(points, (own) =>
    seen.reduce((sum, look) => sum - ((look.points - own) / look.sd) ** 2 / 2, 0),
  )
  const most = Math.max(...logs)
  const weights = logs.map((log) => Math.exp(log - most))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const [pier, gantry] = pieces.map((own) => own[0] as number) as [number, number]
  const rising: number[] = []
  for (const weight of weights) rising.push((rising.at(-1) ?? 0) + weight)
  // As factors on the first draw, in random order, so that draws of two teams stay independent.
  const factors = Array.from({ length: draws }, () => {
    const at = uniforms.next() * total
    const d = Math.max(
      0,
      rising.findIndex((sum) => sum > at),
    )
    return pier > 0 ? (pieces[0]?.[d] as number) / pier : (pieces[1]?.[d] as number) / gantry
  })
  return rated(belief.team, { pier, gantry, davit: finishes[0]?.[0] as number, form: factors })
}

/** True chance of the alliance that we form after twelve looks where they are worth most, less that after twelve that go round. */
function advantage(seed: number): number {
  const { truth, belief } = eventOf(seed)
  const uniforms = new Uniforms(seed, [31])
  const normal = () => normalQuantile(uniforms.next())
  const real = strengthsOf(truth, seed)
  const seeds = belief.toSorted((a, b) => meanOf(b) - meanOf(a)).map(({ team }) => team)
  const us = seeds[seed % rules.alliances] as string
  const matches = Array.from({ length: matchesToCome }, (_, k) => {
    const order = belief.map(({ team }) => ({ team, at: uniforms.next() })).sort((a, b) => a.at - b.at)
    return { id: `m${k}`, teams: order.slice(0, 6).map(({ team }) => team), pause: false }
  })
  /** The same luck whoever looks: what a look at a robot in a match tells. */
  const told = new Map(
    matches.flatMap(({ id, teams }) =>
      teams.map((team) => {
        const [points, sd] = [
          truth.find((each) => each.team === team)!,
          luck * meanOf(belief.find((each) => each.team === team)!),
        ]
        return [`${id} ${team}`, { points: meanOf(points) + sd * normal(), sd }] as const
      }),
    ),
  )
  const { prospects } = comingDecision({
    game,
    teams: belief,
    lots: lots(belief, { pairings: samplePairings({ teams: belief, seed }), each: 40, sd: 14, seed }),
    rules,
    seeds,
    us,
    perMatch: Object.fromEntries(belief.map((each) => [each.team, (luck * meanOf(each)) ** 2])),
  })
  const { looks: best } = whereToLook({ prospects, matches, people: [{ person: 'one' }], longest: 99, rest: 1 })
  const counts = new Map<string, number>()
  const round = matches.map(({ id, teams }) => {
    const [team] = teams
      .filter((each) => each !== us)
      .toSorted((a, b) => (counts.get(a) ?? 0) - (counts.get(b) ?? 0)) as [string]
    counts.set(team, (counts.get(team) ?? 0) + 1)
    return { match: id, team }
  })
  const chance = (looks: readonly { match: string; team: string }[]) => {
    const resampled = new Uniforms(seed, [32])
    const known = belief.map((each) =>
      after(
        each,
        looks.flatMap(({ match, team }) => (team === each.team ? [told.get(`${match} ${team}`)!] : [])),
        resampled,
      ),
    )
    const strengths = strengthsOf(known, seed)
    const places = new Map(seeds.map((team, place) => [team, place]))
    let selection = Selection.begin(rules, seeds)
    while (selection.state.turn) {
      const { state } = selection
      const team = onTurn(state, us)
        ? (pickOrder({ game, strengths, selection, us }).order.choices[0]?.team ?? null)
        : bestOf(state.free, places)
      if (team === null) break
      selection = selection.take({ kind: 'accepts', team })
    }
    const { state } = follow(selection, () => null)
    const ours = membersOf(allianceOf(state, us) as NonNullable<ReturnType<typeof allianceOf>>)
    return real.against(
      ours,
      state.alliances.map(membersOf).filter((each) => !each.includes(us)),
    )[0] as number
  }
  return chance(best) - chance(round)
}

test.runIf(inLongForm)(
  'over 200 generated events looks where they are worth most are set against equal watching, and the interval is told whatever its sign',
  { timeout: 3_600_000 },
  () => {
    const events = Number(process.env['GENERATED_EVENTS'] ?? 200)
    const moments = new Moments()
    for (let seed = 1; seed <= events; seed++) moments.add(advantage(seed))
    const { mean, standardError } = moments
    const interval = [mean - 1.96 * standardError, mean + 1.96 * standardError] as const
    console.log(
      'looks against equal watching',
      events,
      'events, in true win chance',
      mean,
      '95 % interval',
      ...interval,
    )
    // What it must not do is cost a decision more than chance explains.
    expect(interval[1]).toBeGreaterThan(0)
  },
)
