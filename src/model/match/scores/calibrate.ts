import type { Option } from '../../documents/types.ts'
import { Planner } from '../../plan/planner.ts'
import { philox } from '../../random/index.ts'
import { habitPoints } from '../habitPoints.ts'
import { blockSize, preciseEnough } from '../precision.ts'
import { Reckoning } from '../reckoning.ts'
import { Roster } from '../setup.ts'
import { Simulator } from '../simulator.ts'
import { outcome } from './spread.ts'
import type { Calibration, Expected, Records, SeasonMatch, SeasonRequest } from './types.ts'

/** So many options share the memory of one event loop; then a new one is begun. */
const mostOptions = 60

/** Simulates the matches of a season, so that scores can be drawn from them. Keeps what robots can do between matches. */
export class Calibrator {
  private readonly request: SeasonRequest
  private readonly teams: ReadonlyMap<string, readonly Option[]>
  private readonly planner: Planner
  private readonly points = new Map<Option, number>()
  private roster: Roster
  private readonly seated = new Set<Option>()

  constructor(request: SeasonRequest) {
    this.request = request
    this.teams = new Map(request.teams.map(({ team, draws }) => [team, draws]))
    // The coarser grid moves points by hundredths, and by the same for all draws of a team.
    this.planner = new Planner(request.game, 0.25)
    this.roster = new Roster(request.game)
  }

  /**
   * Plays one match of the season, by its number, until it is precise enough.
   * @throws ModelError as plans do, and where a bonus says nothing about the level
   */
  calibrate(number: number): Calibration {
    const match = this.request.matches[number] as SeasonMatch
    const draws = this.request.teams[0]?.draws.length ?? 1
    const expected: Expected = { ours: this.expected(match.ours, draws), theirs: this.expected(match.theirs, draws) }
    return { records: this.play(number, match, draws), expected }
  }

  private alliance(teams: readonly string[], draw: number): Option[] {
    return teams.map((team) => this.teams.get(team)?.[draw] as Option)
  }

  private expected(teams: readonly string[], draws: number): Float64Array {
    // With one draw the line is a constant, whatever the points are.
    if (draws === 1) return new Float64Array(1)
    return Float64Array.from({ length: draws }, (_, draw) =>
      this.alliance(teams, draw).reduce((sum, option) => sum + this.expectedPoints(option), 0),
    )
  }

  /** Points of a robot alone, as if nobody were in its way; one that stops has played half of the match on average. */
  private expectedPoints(option: Option): number {
    const { absent, stops } = option.robot.reliability
    const known = this.points.get(option) ?? (1 - absent) * (1 - stops / 2) * this.alone(option)
    this.points.set(option, known)
    return known
  }

  private alone(option: Option): number {
    return habitPoints(this.request.game, option)?.total ?? this.planner.value(option)
  }

  private play(number: number, match: SeasonMatch, draws: number): Records {
    const { replicates, precision } = this.request
    const tables = Array.from({ length: draws }, (_, draw) => this.table(number, match, draw))
    const { win, tie, loss } = this.request.game.ranking
    const records = empty(replicates)
    const so = { matches: 0, wins: 0, ties: 0 }
    while (so.matches < replicates && !preciseEnough(so, precision)) {
      const from = so.matches
      const to = Math.min(replicates, from + blockSize)
      // One draw after the other: the memory of a match is made ready for it once.
      for (const [draw, { simulator, reckoning }] of tables.entries())
        for (let k = from + ((draw - (from % draws) + draws) % draws); k < to; k += draws) {
          simulator.play(k)
          reckoning.of(simulator)
          const [ours, theirs] = reckoning.score as unknown as [number, number]
          const sign = outcome(ours - theirs)
          records.draw[k] = draw
          records.ours[k] = ours
          records.theirs[k] = theirs
          const paid = sign > 0 ? [win, loss] : sign < 0 ? [loss, win] : [tie, tie]
          records.oursExtra[k] = (reckoning.rankingPoints[0] as number) - (paid[0] as number)
          records.theirsExtra[k] = (reckoning.rankingPoints[1] as number) - (paid[1] as number)
          so.wins += Number(sign > 0)
          so.ties += Number(sign === 0)
        }
      so.matches = to
    }
    return firstOf(records, so.matches)
  }

  private table(number: number, match: SeasonMatch, draw: number): { simulator: Simulator; reckoning: Reckoning } {
    const [ours, theirs] = [this.alliance(match.ours, draw), this.alliance(match.theirs, draw)]
    const setup = this.rosterFor([...ours, ...theirs]).setup(ours, theirs)
    return {
      simulator: new Simulator(setup, seedOf(this.request.seed, number)),
      reckoning: new Reckoning(setup, this.request.level ?? null),
    }
  }

  private rosterFor(options: readonly Option[]): Roster {
    if (new Set([...this.seated, ...options]).size > mostOptions) {
      this.roster = new Roster(this.request.game)
      this.seated.clear()
    }
    for (const option of options) this.seated.add(option)
    return this.roster
  }
}

/** The last season's calibrator is kept ready, since its matches are asked for part by part. */
export class Calibrators {
  private kept: { of: string; calibrator: Calibrator } | null = null

  for(request: SeasonRequest): Calibrator {
    const of = JSON.stringify(request)
    if (this.kept?.of !== of) this.kept = { of, calibrator: new Calibrator(request) }
    return this.kept.calibrator
  }
}

/** Each match of a season has luck of its own. */
function seedOf(seed: number, match: number): number {
  const [low, high] = philox([match, 0, 0, 1], [seed % 2 ** 32, Math.floor(seed / 2 ** 32)]) as unknown as number[]
  return (high! & 0xfffff) * 2 ** 32 + low!
}

const empty = (count: number): Records => ({
  draw: new Uint16Array(count),
  ours: new Float64Array(count),
  theirs: new Float64Array(count),
  oursExtra: new Float64Array(count),
  theirsExtra: new Float64Array(count),
})

const firstOf = ({ draw, ours, theirs, oursExtra, theirsExtra }: Records, count: number): Records => ({
  draw: draw.slice(0, count),
  ours: ours.slice(0, count),
  theirs: theirs.slice(0, count),
  oursExtra: oursExtra.slice(0, count),
  theirsExtra: theirsExtra.slice(0, count),
})
