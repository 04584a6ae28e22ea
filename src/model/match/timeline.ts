import { Reckoning } from './reckoning.ts'
import { Roster, type Setup } from './setup.ts'
import { Simulator } from './simulator.ts'
import type { MatchEvent, MatchRequest, SampleMatches, Timeline } from './types.ts'

/** Matches among which a typical, a best and a worst one are looked for. */
const looked = 500

/**
 * Three matches to look at: the one whose margin lies in the middle of the first 500, our best and our worst of them.
 * @throws ModelError as `simulate` does
 */
export function sampleMatches(request: Omit<MatchRequest, 'replicates'>): SampleMatches {
  return samplesOf(new Roster(request.game).setup(request.ours, request.theirs), request)
}

/** The same of robots that are ready: making them so takes longer than the matches. */
export function samplesOf(setup: Setup, of: { seed: number; level?: string | null | undefined }): SampleMatches {
  const simulator = new Simulator(setup, of.seed)
  const reckoning = new Reckoning(setup, of.level ?? null)
  const margins = Array.from({ length: looked }, (_, replicate) => {
    simulator.play(replicate)
    reckoning.of(simulator)
    return { replicate, margin: (reckoning.score[0] as number) - (reckoning.score[1] as number) }
  }).sort((a, b) => a.margin - b.margin || a.replicate - b.replicate)
  const at = (k: number) => timelineOf(setup, { simulator, reckoning, replicate: margins[k]!.replicate })
  return { typical: at(looked / 2), best: at(looked - 1), worst: at(0) }
}

function timelineOf(
  { players }: Setup,
  { simulator, reckoning, replicate }: { simulator: Simulator; reckoning: Reckoning; replicate: number },
): Timeline {
  const events: MatchEvent[] = []
  simulator.log = (event) => events.push(event)
  simulator.play(replicate)
  simulator.log = null
  reckoning.of(simulator)
  return {
    replicate,
    score: { ours: reckoning.score[0] as number, theirs: reckoning.score[1] as number },
    atEnd: { ours: reckoning.atEnd(0), theirs: reckoning.atEnd(1) },
    played: players.map((_, robot) => simulator.played[robot] !== 0),
    // Pieces of one leg may be counted together at its end: each has its own time.
    events: events.sort((a, b) => a.at - b.at),
  }
}
