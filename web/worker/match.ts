import type { Game, Option, Point } from '../../src/model/documents/types.ts'
import { placeOf } from '../../src/model/field/places.ts'
import { polyline } from '../../src/model/field/polyline.ts'
import { fieldRoutes } from '../../src/model/field/routes.ts'
import { blockSize, preciseEnough } from '../../src/model/match/precision.ts'
import { Reckoning } from '../../src/model/match/reckoning.ts'
import { matchReport } from '../../src/model/match/report.ts'
import { Roster, type Setup } from '../../src/model/match/setup.ts'
import { Simulator } from '../../src/model/match/simulator.ts'
import { addSums, emptySums, layoutOf, type Sums, Tally } from '../../src/model/match/tally.ts'
import { samplesOf } from '../../src/model/match/timeline.ts'
import type { SampleMatches } from '../../src/model/match/types.ts'
import type { Lineup, Questions, SampledMatches, Way } from './protocol.ts'

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

/**
 * Plays the matches `from` … `to − 1` of a line-up and adds them to those before, or fewer where the chance to win is known
 * as precisely as asked. Another line-up of the same seed meets the same luck in each (same seed, match and robot's place),
 * so that the two leads of a match can be held against each other.
 */
export function playOn(asked: Asked, progress: (done: number, total: number) => void): Questions['match']['answer'] {
  const { game, level, seed, lineup, from, to, soFar, precision } = asked
  const table = new Table(setupOf(game, lineup), { seed, level, soFar })
  const leads = new Float64Array(to - from)
  let played = from
  while (played < to) {
    leads[played - from] = table.play(played)
    played++
    if (played % blockSize !== 0 && played !== to) continue
    table.endBlock()
    progress(played - from, to - from)
    if (preciseEnough(table.sums, precision ?? undefined)) break
  }
  return {
    soFar: table.sums,
    leads: leads.slice(0, played - from),
    report: matchReport(table.setup.ground, table.sums, seed),
  }
}

/** Three matches to look at, with the ways that robots take in them. */
export function sampled(asked: Questions['sampleMatches']['ask']): SampledMatches {
  const { game, level, seed, lineup } = asked
  const { ours, theirs } = lineup
  const samples = samplesOf(setupOf(game, lineup), { seed, level })
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
