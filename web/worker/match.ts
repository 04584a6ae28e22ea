import type { Game, Option, Point } from '../../src/model/documents/types.ts'
import { placeOf } from '../../src/model/field/places.ts'
import { polyline } from '../../src/model/field/polyline.ts'
import { fieldRoutes } from '../../src/model/field/routes.ts'
import { equal, Reckoning } from '../../src/model/match/reckoning.ts'
import { matchReport } from '../../src/model/match/report.ts'
import { blockSize } from '../../src/model/match/run.ts'
import { Roster, type Setup } from '../../src/model/match/setup.ts'
import { Simulator } from '../../src/model/match/simulator.ts'
import { addSums, emptySums, layoutOf, type Sums, Tally } from '../../src/model/match/tally.ts'
import { sampleMatches } from '../../src/model/match/timeline.ts'
import type { SampleMatches } from '../../src/model/match/types.ts'
import type { Differences, Lineup, MatchesSoFar, Questions, SampledMatches, Way } from './protocol.ts'

type Asked = Questions['match']['ask']

let roster: { of: string; made: Roster; setups: Map<string, Setup> } | null = null

/** What robots can do is worked out once: the last game's players and line-ups are kept, because an edit changes one of them. */
function setupOf(game: Game, { ours, theirs }: Lineup): Setup {
  const of = JSON.stringify(game)
  if (roster?.of !== of) roster = { of, made: new Roster(game), setups: new Map() }
  const key = JSON.stringify([ours, theirs])
  const found = roster.setups.get(key)
  if (found) return found
  const made = roster.made.setup(ours, theirs)
  if (roster.setups.size >= 4) roster.setups.delete(roster.setups.keys().next().value!)
  roster.setups.set(key, made)
  return made
}

/** One set-up that plays match after match. */
class Table {
  readonly setup: Setup
  readonly sums: Sums
  private readonly simulator: Simulator
  private readonly reckoning: Reckoning
  private tally: Tally

  constructor(setup: Setup, of: { seed: number; level: string | null; soFar: Sums | null }) {
    this.setup = setup
    this.simulator = new Simulator(setup, of.seed)
    this.reckoning = new Reckoning(setup, of.level)
    this.tally = new Tally(setup)
    this.sums = of.soFar ?? emptySums(layoutOf(setup.ground).count, 4 * setup.ground.holds.length)
  }

  /** Our lead at the end of the match with this number. */
  play(replicate: number): number {
    this.simulator.play(replicate)
    this.reckoning.of(this.simulator)
    this.tally.add(this.simulator, this.reckoning)
    return (this.reckoning.score[0] as number) - (this.reckoning.score[1] as number)
  }

  /** Adds the matches since the last block to the others: in blocks, as every other player does, so that sums agree to the last bit. */
  endBlock(): void {
    addSums(this.sums, this.tally.sums)
    this.tally = new Tally(this.setup)
  }
}

function note(differences: Differences, difference: number): void {
  differences.sum += difference
  differences.squares += difference * difference
  if (difference > equal) differences.ahead++
  else if (difference >= -equal) differences.level++
  const whole = Math.round(difference)
  differences.counts.set(whole, (differences.counts.get(whole) ?? 0) + 1)
}

const noDifferences = (): Differences => ({ sum: 0, squares: 0, ahead: 0, level: 0, counts: new Map() })

/**
 * Plays the matches `from` … `to − 1` and adds them to those before. With a second line-up both play every match on the same
 * luck (same seed, match and robot's place), and what differs is the lead of the second less that of the first, match by match.
 */
export function playOn(asked: Asked, progress: (done: number, total: number) => void): Questions['match']['answer'] {
  const { game, level, seed, from, to, soFar } = asked
  const first = new Table(setupOf(game, asked.first), { seed, level, soFar: soFar?.first ?? null })
  const second = asked.second && new Table(setupOf(game, asked.second), { seed, level, soFar: soFar?.second ?? null })
  const differences = second ? (soFar?.differences ?? noDifferences()) : null
  for (let replicate = from; replicate < to; replicate++) {
    const lead = first.play(replicate)
    if (second && differences) note(differences, second.play(replicate) - lead)
    if ((replicate + 1) % blockSize === 0 || replicate + 1 === to) {
      first.endBlock()
      second?.endBlock()
      progress(replicate + 1 - from, to - from)
    }
  }
  const played: MatchesSoFar = { first: first.sums, second: second?.sums ?? null, differences }
  return {
    soFar: played,
    report: matchReport(first.setup.ground, first.sums, seed),
    pair: second &&
      differences && {
        report: matchReport(second.setup.ground, second.sums, seed),
        difference: differenceOf(differences, first.sums.matches),
      },
  }
}

/** Mean and error of differences that belong together in pairs, and how often the second does better. */
function differenceOf({ sum, squares, ahead, level, counts }: Differences, matches: number) {
  const mean = sum / matches
  const variance = matches > 1 ? Math.max(0, squares - matches * mean * mean) / (matches - 1) : 0
  const chance = (times: number) => {
    // As in the report: two more of each kind, so that an error is never 0 (Agresti & Coull 1998).
    const near = (times + 2) / (matches + 4)
    return { probability: times / matches, standardError: Math.sqrt((near * (1 - near)) / (matches + 4)) }
  }
  return {
    mean: { mean, sd: Math.sqrt(variance), standardError: Math.sqrt(variance / matches) },
    ahead: chance(ahead),
    level: chance(level),
    distribution: [...counts]
      .sort(([a], [b]) => a - b)
      .map(([value, times]): [number, number] => [value, times / matches]),
  }
}

/** Three matches to look at, with the ways that robots take in them. */
export function sampled(asked: Questions['sampleMatches']['ask']): SampledMatches {
  const { game, level, seed, lineup } = asked
  const { ours, theirs } = lineup
  const samples = sampleMatches({ game, level: level ?? undefined, seed, ours, theirs })
  return { samples, ways: [...ours, ...theirs].map((option, robot) => waysOf(game, option, drivesOf(samples, robot))) }
}

function drivesOf(samples: SampleMatches, robot: number): Set<string> {
  const drives = new Set<string>()
  for (const { events } of Object.values(samples))
    for (const event of events)
      if (event.kind === 'drives' && event.robot === robot) drives.add(`${event.from}>${event.to}`)
  return drives
}

function waysOf(game: Game, option: Option, drives: Set<string>): { [fromTo: string]: Way } {
  const routes = fieldRoutes(game.field, option.robot.footprint)
  const auto = option.robot.autos.find(({ id }) => id === option.auto)
  if (auto) drives.add(`${option.start}>${auto.endsAt}`)
  const way = (from: string, to: string): Way => {
    const [start, end] = [placeOf(game, from)?.at, placeOf(game, to)?.at]
    if (!start || !end) return []
    const found = routes.route(start, end)
    return found ? thinned(polyline(start, found.segments)) : [start, end]
  }
  return Object.fromEntries([...drives].map((drive) => [drive, way(...(drive.split('>') as [string, string]))]))
}

/** Points nearer than this to the one before (m) are left out of a drawing. */
const near = 0.08

function thinned(path: readonly Point[]): Way {
  const kept: Point[] = []
  for (const [index, point] of path.entries()) {
    const last = kept.at(-1)
    const ends = index === path.length - 1
    if (!last || ends || Math.hypot(point[0] - last[0], point[1] - last[1]) > near) kept.push(point)
  }
  return kept
}
