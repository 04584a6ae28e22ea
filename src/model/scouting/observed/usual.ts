import type { TeamMatch } from '../seen/index.ts'

/** What is taken from records as it is: it hardly moves a forecast, so that means do. */
export interface Usual {
  /** Share of a trip until its last piece is collected. */
  collecting: number
  fouls: { minor: number; major: number }
  /** What it holds when teleop begins, in pieces; 0 where it mostly holds none. */
  preload: number
  /** Sources that it was seen at. */
  sources: string[]
  startSpot: string | null
}

/** Trips and matches of the event that a team's own are weighed against. */
const priorTrips = 4
const priorMatches = 2

export function usualOf(own: readonly TeamMatch[], event: readonly TeamMatch[]): Usual {
  const all = collectingIn(event)
  const share = all.trips > 0 ? all.share / all.trips : 0.5
  const mine = collectingIn(own)
  const fouls = foulsIn(event)
  const ownFouls = foulsIn(own)
  const each = (kind: 'minor' | 'major') =>
    (ownFouls[kind] + (priorMatches * fouls[kind]) / Math.max(1, fouls.matches)) / (ownFouls.matches + priorMatches)
  const firsts = own.flatMap(({ teleop }) => (teleop?.first && teleop.first.preloaded !== null ? [teleop.first] : []))
  const held = firsts.filter(({ preloaded }) => preloaded)
  const starts = own.flatMap(({ startSpot }) => startSpot ?? [])
  return {
    collecting: (mine.share + priorTrips * share) / (mine.trips + priorTrips),
    fouls: { minor: each('minor'), major: each('major') },
    preload:
      2 * held.length > firsts.length
        ? Math.max(1, Math.round(held.reduce((sum, { pieces }) => sum + pieces, 0) / held.length))
        : 0,
    sources: [...new Set(own.flatMap(({ teleop }) => Object.keys(teleop?.sources ?? {})))],
    startSpot: starts.at(-1) ?? null,
  }
}

function collectingIn(matches: readonly TeamMatch[]): { trips: number; share: number } {
  let [trips, share] = [0, 0]
  for (const { teleop } of matches)
    for (const { seconds, collecting, weight } of teleop?.cycles ?? []) {
      if (collecting === null || seconds <= 0) continue
      trips += weight
      share += (weight * Math.min(seconds, collecting)) / seconds
    }
  return { trips, share }
}

function foulsIn(matches: readonly TeamMatch[]): { matches: number; minor: number; major: number } {
  const seen = matches.flatMap(({ fouls }) => fouls ?? [])
  const sum = (kind: 'minor' | 'major') => seen.reduce((total, each) => total + each[kind], 0)
  return { matches: seen.length, minor: sum('minor'), major: sum('major') }
}
