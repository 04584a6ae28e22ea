import { Uniforms } from '../../../../src/model/random/index.ts'
import { seenIn, type TeamMatch } from '../../../../src/model/scouting/seen/index.ts'
import { normalQuantile } from '../../../../src/model/scouting/statistics/index.ts'
import type { Happening, Observation } from '../../../../src/model/scouting/types.ts'
import { game } from '../../reference.ts'

/** How a robot of the test's events plays. Its matches are made of this and of chance; estimates never see it. */
export interface Truth {
  team: string
  /** Median of its trips (s), and spreads of ln within and between matches. */
  trip: number
  within: number
  form: number
  /** Chances by number of pieces in a trip, from 1. */
  pieces: number[]
  /** Share of its trips to the pier, others to the gantry; and how far this moves from match to match. */
  pier: number
  strategy: number
  success: { pier: number; gantry: number }
  finish: number
  stops: number
  departs: number
}

export interface WorldShape {
  teams: number
  matches: number
  seed: number
  form?: number
  strategy?: number
  stops?: number
  /** Most pieces of a trip; volleys of up to so many. */
  volley?: number
  /** Spread of ln trip time between teams. */
  between?: number
}

export class Chance {
  private readonly uniforms: Uniforms
  constructor(seed: number, stream: number) {
    this.uniforms = new Uniforms(seed, [stream])
  }
  uniform(): number {
    return this.uniforms.next()
  }
  normal(): number {
    return normalQuantile(this.uniforms.next())
  }
}

export function truths({
  teams,
  seed,
  form = 0.1,
  strategy = 0,
  stops = 0.03,
  volley = 1,
  between = 0.3,
}: WorldShape): Truth[] {
  return Array.from({ length: teams }, (_, t) => {
    const chance = new Chance(seed, 1000 + t)
    const pieces = Array.from({ length: volley }, () => 0.2 + chance.uniform())
    const all = pieces.reduce((sum, p) => sum + p, 0)
    return {
      team: `t${t}`,
      trip: 13 * Math.exp(between * chance.normal()),
      within: 0.3,
      form,
      pieces: pieces.map((p) => p / all),
      pier: 0.1 + 0.8 * chance.uniform(),
      strategy,
      success: { pier: 0.7 + 0.28 * chance.uniform(), gantry: 0.5 + 0.45 * chance.uniform() },
      finish: 0.2 + 0.7 * chance.uniform(),
      stops,
      departs: 12 + 6 * chance.uniform(),
    }
  })
}

const { auto, pause, teleop } = game.clock
const start = auto + pause
const end = start + teleop

export interface Played {
  timeline: Happening[]
  finish: { attempted: string | null; achieved: string | null }
  attempts: number
  points: number
}

/** One match of a robot; `hindered` false: without a stop. */
export function play(truth: Truth, chance: Chance, hindered = true): Played {
  const timeline: Happening[] = []
  const factor = Math.exp(truth.form * chance.normal())
  const stopsAt = hindered && chance.uniform() < truth.stops ? chance.uniform() * end : Number.POSITIVE_INFINITY
  const pier = Math.min(0.98, Math.max(0.02, truth.pier + truth.strategy * chance.normal()))
  const leaves = end - truth.departs
  let now = start
  let [attempts, points] = [0, 0]
  for (;;) {
    const seconds = truth.trip * factor * Math.exp(truth.within * chance.normal())
    const first = now === start
    // A trip is begun before the departure and then brought to its end.
    if (!first && now >= leaves) break
    const done = now + (first ? 0.5 : 1) * seconds
    if (!first) timeline.push({ elapsed: now + 0.5 * seconds, what: 'collected', source: 'slipway' })
    if (done >= leaves || done >= stopsAt) break
    const goal = chance.uniform() < pier ? 'pier' : 'gantry'
    let n = 1
    for (let left = chance.uniform() - (truth.pieces[0] as number); left > 0 && n < truth.pieces.length; n++)
      left -= truth.pieces[n] as number
    for (let k = 0; k < n; k++) {
      const hit = chance.uniform() < truth.success[goal]
      timeline.push({ elapsed: done - 0.4 * (n - 1 - k), what: hit ? 'scored' : 'missed', goal })
      attempts++
      points += hit ? worth[goal] : 0
    }
    now = done
  }
  const stopped = stopsAt < end
  timeline.push(stopped ? { elapsed: stopsAt, what: 'stopped' } : { elapsed: leaves, what: 'left' })
  const achieved = !stopped && chance.uniform() < truth.finish ? 'davit' : null
  return {
    timeline: timeline.filter(({ elapsed }) => elapsed <= stopsAt).sort((a, b) => a.elapsed - b.elapsed),
    finish: { attempted: stopped ? null : 'davit', achieved },
    attempts,
    points,
  }
}

const worth = Object.fromEntries(game.goals.map(({ id, award }) => [id, award.kind === 'each' ? award.teleop : 0])) as {
  pier: number
  gantry: number
}

const head = {
  format: 1,
  subject: 'robot',
  origin: 'live',
  scout: 's',
  device: 'd',
  sequence: 1,
  game: 1,
  identifiedBy: 'number',
} as const

/** The record of a match as somebody in the stands makes it: times, or counts alone. */
export function record(team: string, match: string, played: Played, counted = false): Observation {
  const { timeline, finish } = played
  const base: Observation = { ...head, id: `${match} ${team}`, match, team, finish }
  if (!counted) return { ...base, timeline }
  const stop = timeline.find(({ what }) => what === 'stopped')?.elapsed
  const left = timeline.find(({ what }) => what === 'left')?.elapsed
  const goals = ['pier', 'gantry'].map((goal) => {
    const own = timeline.filter((each) => each.goal === goal)
    const scored = own.filter(({ what }) => what === 'scored').length
    return { goal, period: 'teleop' as const, scored, missed: own.length - scored }
  })
  return {
    ...base,
    counts: goals,
    ...(stop === undefined ? {} : { stoppedAt: stop }),
    ...(left === undefined ? {} : { departedAt: left }),
  }
}

/** What was seen of all robots in so many matches each. */
export function seenOf(
  all: readonly Truth[],
  { matches, seed }: Pick<WorldShape, 'matches' | 'seed'>,
  counted = false,
) {
  return new Map(
    all.map((truth, t): [string, TeamMatch[]] => {
      const chance = new Chance(seed, 5000 + t)
      const own = Array.from({ length: matches }, (_, m): TeamMatch => {
        const observation = record(truth.team, `m${m}`, play(truth, chance), counted)
        return { ...seenIn(game, observation), match: `m${m}`, era: 0 }
      })
      return [truth.team, own]
    }),
  )
}

/** Expected pieces tried and points in a match without a stop, by so many matches played. */
export function expectationOf(truth: Truth, seed: number, matches = 800): { attempts: number; points: number } {
  const chance = new Chance(seed, 9000)
  let [attempts, points] = [0, 0]
  for (let m = 0; m < matches; m++) {
    const played = play(truth, chance, false)
    attempts += played.attempts / matches
    points += played.points / matches
  }
  return { attempts, points }
}
