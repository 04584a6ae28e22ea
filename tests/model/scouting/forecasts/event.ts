import type { Game } from '../../../../src/model/documents/types.ts'
import { TeamDraws } from '../../../../src/model/scouting/estimates/draws.ts'
import { EventEstimates } from '../../../../src/model/scouting/estimates/index.ts'
import { nextPointDraws } from '../../../../src/model/scouting/estimates/points.ts'
import { binomialOf, Named } from '../../../../src/model/scouting/estimates/pool.ts'
import type { ChanceDraws, EventPriors, ShareDraws } from '../../../../src/model/scouting/estimates/priors.ts'
import { drawCount } from '../../../../src/model/scouting/estimates/settings.ts'
import { seenIn, type TeamMatch } from '../../../../src/model/scouting/seen/index.ts'
import { betaQuantile, gammaQuantile } from '../../../../src/model/scouting/statistics/index.ts'
import { game as season } from '../../reference.ts'
import { Chance, record } from '../estimates/world.ts'

/** Two goals that pay by the piece and one finish: a score is what three robots bring. */
export const game: Game = {
  ...season,
  goals: season.goals.filter(({ award }) => award.kind === 'each'),
  finishes: season.finishes.filter(({ id }) => id === 'davit'),
  sets: [],
  bonuses: [],
}
const pays = game.goals.map(({ award }) => (award.kind === 'each' ? award.teleop : 0)) as [number, number]
const finishPays = game.finishes[0]!.points

/** What the teams of all generated events share; the program has to find it out. */
const shared = {
  shape: 3,
  mean: 7,
  mix: [2.4, 1.6],
  success: [
    [12, 3],
    [9, 4],
  ],
  finish: [1.5, 1.5],
  absent: 0.02,
  stops: 0.04,
} as const

interface Robot {
  team: string
  rate: number
  first: number
  success: readonly [number, number]
  finish: number
}

export interface PlayedMatch {
  round: number
  red: string[]
  blue: string[]
  /** Red's lead as it came. */
  lead: number
}

export interface Generated {
  teams: string[]
  /** By team, one match a round. */
  seen: Map<string, TeamMatch[]>
  points: Map<string, number[]>
  matches: PlayedMatch[]
}

function poisson(mean: number, chance: Chance): number {
  let [time, count] = [-Math.log(chance.uniform()), 0]
  for (; time < mean; count++) time -= Math.log(chance.uniform())
  return count
}

function robotOf(t: number, chance: Chance): Robot {
  const beta = ([a, b]: readonly [number, number]) => betaQuantile(chance.uniform(), a, b)
  return {
    team: `t${t}`,
    rate: gammaQuantile(chance.uniform(), shared.shape, shared.shape / shared.mean),
    first: beta(shared.mix),
    success: [beta(shared.success[0]), beta(shared.success[1])],
    finish: beta(shared.finish),
  }
}

/** One robot's match: what a scout counts, and its points. */
function played(robot: Robot, chance: Chance) {
  const came = chance.uniform() >= shared.absent
  const stop = chance.uniform() < shared.stops ? chance.uniform() : 1
  const counts = [0, 0].map(() => ({ scored: 0, missed: 0 }))
  let points = 0
  for (let left = came ? poisson(robot.rate * stop, chance) : 0; left > 0; left--) {
    const goal = chance.uniform() < robot.first ? 0 : 1
    const hit = chance.uniform() < robot.success[goal]!
    counts[goal]![hit ? 'scored' : 'missed']++
    if (hit) points += pays[goal]!
  }
  const finished = came && stop === 1 && chance.uniform() < robot.finish
  return { came, stop, counts, finished, points: points + (finished ? finishPays : 0) }
}

function seenOf(robot: Robot, round: number, { came, stop, counts, finished }: ReturnType<typeof played>): TeamMatch {
  const { auto, pause, teleop } = game.clock
  const finish = { attempted: finished ? 'davit' : null, achieved: finished ? 'davit' : null }
  const nothing = { timeline: [], finish, attempts: 0, points: 0 }
  const observation = {
    ...record(robot.team, `m${round}`, nothing, true),
    counts: counts.map((own, k) => ({ goal: game.goals[k]!.id, period: 'teleop' as const, ...own })),
    departedAt: auto + pause + teleop,
    ...(came ? {} : { absent: true }),
    ...(stop < 1 ? { stoppedAt: auto + pause + stop * teleop } : {}),
  }
  return { ...seenIn(game, observation), match: `m${round}`, era: 0 }
}

/** An event in which every team plays once a round, with whom chance has it. */
export function generated(seed: number, { teams, rounds }: { teams: number; rounds: number }): Generated {
  const chance = new Chance(seed, 41)
  const robots = Array.from({ length: teams }, (_, t) => robotOf(t, chance))
  const out: Generated = {
    teams: robots.map(({ team }) => team),
    seen: new Map(robots.map(({ team }) => [team, []])),
    points: new Map(robots.map(({ team }) => [team, []])),
    matches: [],
  }
  for (let round = 0; round < rounds; round++) {
    const brought = new Map<string, number>()
    for (const robot of robots) {
      const one = played(robot, chance)
      brought.set(robot.team, one.points)
      out.points.get(robot.team)!.push(one.points)
      out.seen.get(robot.team)!.push(seenOf(robot, round, one))
    }
    const order = out.teams
      .map((team) => ({ team, lot: chance.uniform() }))
      .sort((a, b) => a.lot - b.lot)
      .map(({ team }) => team)
    const sum = (side: string[]) => side.reduce((all, team) => all + brought.get(team)!, 0)
    for (let m = 0; m + 6 <= teams; m += 6) {
      const [red, blue] = [order.slice(m, m + 3), order.slice(m + 3, m + 6)]
      out.matches.push({ round, red, blue, lead: sum(red) - sum(blue) })
    }
  }
  return out
}

/** The true numbers that teams share, in the place of those that are worked out. */
function trueShared(): EventPriors {
  const fill = (x: number) => new Float64Array(drawCount).fill(x)
  const chance = (a: number, b: number): ChanceDraws => ({ a: fill(a), b: fill(b) })
  const shares = (alpha: readonly number[]): ShareDraws => ({
    alpha: alpha.map(fill),
    strength: fill(alpha.reduce((sum, a) => sum + a, 0)),
  })
  // Alike in all teams: a prior that hardly moves.
  const alike = (p: number) => chance(1e4 * p, 1e4 * (1 - p))
  return {
    rates: { shape: fill(shared.shape), rate: fill(shared.shape / shared.mean) },
    goals: shares(shared.mix),
    finish: shares(shared.finish),
    success: (k: number) => chance(...(shared.success[k] as [number, number])),
    absent: alike(shared.absent),
    stops: alike(shared.stops),
  } as unknown as EventPriors
}

/** What a team may bring to its next match, by draw: pieces and finish, unless it does not come or stops. */
function scoreDraws(team: string, draws: TeamDraws): Float64Array {
  const points = nextPointDraws(team, game, { draws, holdSeconds: {} })
  const [comes, stops, when, climbs] = ['comes', 'stops', 'when', 'climbs'].map((what) => new Named(`${team} ${what}`))
  const [absent, stopped, finish] = [draws.absent, draws.stops, draws.finish[0]!]
  return points.map((own, d) => {
    if (comes!.uniform(d) < absent[d]!) return 0
    if (stops!.uniform(d) < stopped[d]!) return binomialOf(own, when!.uniform(d), climbs!.uniform(d))
    return own + (climbs!.uniform(d) < finish[d]! ? finishPays : 0)
  })
}

/** Chances that red wins, a tie as half, of the matches of one round by the records before it. */
export function forecasts(event: Generated, round: number): { own: number; ideal: number; match: PlayedMatch }[] {
  const seen = new Map([...event.seen].map(([team, own]) => [team, own.slice(0, round)]))
  const estimates = new EventEstimates({ game, teams: event.teams, seen })
  const { measures } = estimates
  const priors = trueShared()
  const own = new Map<string, Float64Array>()
  const ideal = new Map<string, Float64Array>()
  for (const team of event.teams) {
    own.set(team, scoreDraws(team, estimates.draws(team)))
    ideal.set(team, scoreDraws(team, new TeamDraws(team, { data: estimates.dataOf(team), measures, priors })))
  }
  return event.matches
    .filter((match) => match.round === round)
    .map((match) => ({ own: winOf(match, own), ideal: winOf(match, ideal), match }))
}

function winOf({ red, blue }: PlayedMatch, scores: ReadonlyMap<string, Float64Array>): number {
  let wins = 0
  for (let d = 0; d < drawCount; d++) {
    const sum = (side: string[]) => side.reduce((all, team) => all + scores.get(team)![d]!, 0)
    const lead = sum(red) - sum(blue)
    wins += lead > 0 ? 1 : lead === 0 ? 0.5 : 0
  }
  // As if one more of each had been drawn: nothing is certain.
  return (wins + 1) / (drawCount + 2)
}

/** Red's lead by simple averages of what its robots brought. */
export function averageLead(event: Generated, { red, blue, round }: PlayedMatch): number {
  const mean = (team: string) =>
    event.points
      .get(team)!
      .slice(0, round)
      .reduce((sum, x) => sum + x, 0) / round
  return red.reduce((sum, team) => sum + mean(team), 0) - blue.reduce((sum, team) => sum + mean(team), 0)
}
