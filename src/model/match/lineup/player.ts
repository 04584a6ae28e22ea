import type { Option } from '../../documents/types.ts'
import { Reckoning } from '../reckoning.ts'
import { Roster, type Setup } from '../setup.ts'
import { Simulator } from '../simulator.ts'
import { golden, inRole, rivalOf } from './lineups.ts'
import type { Lineup, LineupRequest } from './types.ts'

/**
 * Plays line-ups against the rivals' settings. Match r meets the same setting and the same luck whoever plays it, so that
 * line-ups can be compared match by match.
 */
export class LineupPlayer {
  private readonly request: LineupRequest
  private readonly roster: Roster
  /** Each of our robots in each of its roles. */
  private readonly inRoles: readonly (readonly Option[])[]
  private readonly ready = new Map<string, { simulator: Simulator; reckoning: Reckoning }>()

  constructor(request: LineupRequest) {
    this.request = request
    this.roster = new Roster(request.game)
    this.inRoles = request.ours.map((option, i) => request.roles[i]!.map((role) => inRole(option, role)))
  }

  /** What the matches `from` … `to − 1` of a line-up were worth: 1, ½ or 0 for a win, tie or loss, or our ranking points. */
  play(lineup: Lineup, from: number, to: number): Float64Array {
    return this.played(lineup, from, to).values
  }

  /** The same, with a mark of their leads. */
  played(lineup: Lineup, from: number, to: number): PlayedLineup {
    const { objective, theirs } = this.request
    const values = new Float64Array(to - from)
    let mark = 0
    // One setting after the other: the memory of a match is made ready for it once.
    for (let rival = 0; rival < theirs.length; rival++)
      for (let match = from; match < to; match++) {
        if (rivalOf(this.request, match) !== rival) continue
        const { simulator, reckoning } = this.match(lineup, rival)
        simulator.play(match)
        reckoning.of(simulator)
        const margin = (reckoning.score[0] as number) - (reckoning.score[1] as number)
        mark += margin * (((match + 1) * golden) % 1)
        values[match - from] =
          objective === 'win'
            ? (Math.sign(Math.abs(margin) < 1e-9 ? 0 : margin) + 1) / 2
            : (reckoning.rankingPoints[0] as number)
      }
    return { values, mark }
  }

  private match(lineup: Lineup, rival: number): { simulator: Simulator; reckoning: Reckoning } {
    const key = `${lineup.join()}|${rival}`
    const known = this.ready.get(key)
    if (known) return known
    const { theirs, seed, level } = this.request
    const own = this.inRoles.map((options, i) => options[lineup[i]!]!)
    const setup: Setup = this.roster.setup(own, theirs[rival]!)
    const made = { simulator: new Simulator(setup, seed), reckoning: new Reckoning(setup, level ?? null) }
    this.ready.set(key, made)
    return made
  }
}

/** Values of some matches, and a number that two line-ups share only where all their leads were the same. */
export interface PlayedLineup {
  values: Float64Array
  mark: number
}

/** Players of line-ups; the last one is kept ready, since a search asks for it round by round. */
export class LineupPlayers {
  private kept: { of: string; player: LineupPlayer } | null = null

  for(request: LineupRequest): LineupPlayer {
    const of = JSON.stringify(request)
    if (this.kept?.of !== of) this.kept = { of, player: new LineupPlayer(request) }
    return this.kept.player
  }
}
