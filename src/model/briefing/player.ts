import { ObservedPlayer } from '../match/observed.ts'
import { blockSize } from '../match/precision.ts'
import { Reckoning } from '../match/reckoning.ts'
import { Roster, type Setup } from '../match/setup.ts'
import { Simulator } from '../match/simulator.ts'
import { Tally } from '../match/tally.ts'
import type { BriefingRequest, PlayedVersion, Version } from './types.ts'
import { optionsOf } from './ways.ts'

interface Ready {
  setup: Setup
  simulator: Simulator
  reckoning: Reckoning
  robots: (ObservedPlayer | null)[]
}

/** Plays versions of a match; match r of each meets the same luck and the same draws of what is believed. */
export class VersionPlayer {
  private readonly request: BriefingRequest
  private readonly roster: Roster
  private readonly ready = new Map<string, Ready>()

  /** @throws ModelError where a bonus says nothing about the level */
  constructor(request: BriefingRequest) {
    this.request = request
    this.roster = new Roster(request.game)
  }

  /** @param of `from` a multiple of a block's size where sums are asked for */
  play(version: Version, of: { from: number; to: number; sums?: boolean }): PlayedVersion {
    const { setup, simulator, reckoning, robots } = this.version(version)
    const { from, to } = of
    const played: PlayedVersion = {
      margins: new Float64Array(to - from),
      rankingPoints: new Float64Array(to - from),
      met: new Uint16Array(6 * (to - from)),
      sums: [],
    }
    let tally: Tally | null = null
    for (let match = from; match < to; match++) {
      if (of.sums && match % blockSize === 0) {
        tally = new Tally(setup)
        played.sums.push(tally.sums)
      }
      simulator.play(match)
      reckoning.of(simulator)
      tally?.add(simulator, reckoning)
      const k = match - from
      played.margins[k] = (reckoning.score[0] as number) - (reckoning.score[1] as number)
      played.rankingPoints[k] = reckoning.rankingPoints[0] as number
      for (const [i, robot] of robots.entries()) played.met[6 * k + i] = robot ? robot.draws.indexOf(robot.now) : 0
    }
    return played
  }

  private version(version: Version): Ready {
    const key = JSON.stringify(version)
    const known = this.ready.get(key)
    if (known) return known
    const { level, seed } = this.request
    const options = optionsOf(this.request, version)
    const setup = this.roster.setup(options.slice(0, 3), options.slice(3))
    const made = {
      setup,
      simulator: new Simulator(setup, seed),
      reckoning: new Reckoning(setup, level ?? null),
      robots: setup.players.map((player) => (player instanceof ObservedPlayer ? player : null)),
    }
    this.ready.set(key, made)
    return made
  }
}

/**
 * Players of briefings; the last one is kept ready, since a briefing asks for it round by round. The request comes as its JSON text:
 * hundreds of draws are handed to a thread in a fraction of the time, and it is read once.
 */
export class VersionPlayers {
  private kept: { of: string; player: VersionPlayer } | null = null

  for(request: string): VersionPlayer {
    if (this.kept?.of !== request)
      this.kept = { of: request, player: new VersionPlayer(JSON.parse(request) as BriefingRequest) }
    return this.kept.player
  }
}
