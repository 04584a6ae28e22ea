import type { Duration, Game, Robot } from '../../../../src/model/documents/types.ts'
import type { Happening, Observation } from '../../../../src/model/scouting/types.ts'
import { optionNamed, game as reference } from '../../reference.ts'

/** Teleop from 20 s to 520 s, so that times can be counted by hand and most trips come to their end. */
export const game: Game = { ...reference, clock: { auto: 15, pause: 5, teleop: 500, endgame: 30 } }
export const begins = 20
export const ends = 520

const some = optionNamed('petrel-best').robot

/** A robot whose legs are given whole, wherever they start. */
export function wholeRobot(
  collect: { [source: string]: Duration },
  score: { [goal: string]: Duration },
  form = 1,
): Robot {
  return {
    ...some,
    form: { spread: form },
    carries: { ...some.carries, cask: 2 },
    collect: Object.fromEntries(Object.entries(collect).map(([id, whole]) => [id, { whole, success: 1, retry: null }])),
    score: Object.fromEntries(
      Object.entries(score).map(([id, whole]) => [id, [{ whole, spots: 'any' as const, success: 1 }]]),
    ),
  }
}

export const happened = (elapsed: number, what: Happening['what'], more: Partial<Happening> = {}): Happening => ({
  elapsed,
  what,
  ...more,
})

let made = 0

/** A record of a run of practice. */
export function practice(timeline: Happening[], more: Partial<Observation> = {}): Observation {
  made++
  return {
    format: 1,
    id: `r${made}`,
    match: null,
    team: '90001',
    subject: 'robot',
    origin: 'practice',
    scout: 's',
    device: 'd',
    sequence: made,
    game: 1,
    identifiedBy: 'number',
    timeline,
    ...more,
  }
}

/** Trips one after the other from teleop's start, the first to be placed at once. */
export function driven(
  trips: readonly { source?: string; goal: string; collecting: number; scoring: number; n?: number }[],
  until: number,
): Happening[] {
  const timeline = [happened(begins + 1, 'scored', { goal: 'pier' })]
  let elapsed = begins + 1
  for (const { source, goal, collecting, scoring, n = 1 } of trips) {
    if (elapsed + collecting > until) break
    elapsed += collecting
    timeline.push(happened(elapsed, 'collected', { ...(source && { source }), n }))
    if (elapsed + scoring > until) break
    elapsed += scoring
    timeline.push(happened(elapsed, 'scored', { goal, n }))
  }
  timeline.push(happened(until, 'stopped'))
  return timeline
}
