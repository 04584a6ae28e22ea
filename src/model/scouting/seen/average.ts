import { addAll } from './counted.ts'
import type { Departure, GoalCounts, Seen, SeenTeleop } from './types.ts'

/**
 * Several records of one robot in one match as one: pieces and seconds averaged, times each counting for its share of the
 * records with times. It was absent where more than half say so; what only some say is taken from those.
 *
 * @param seen at least one, in the order of their arrival
 */
export function averaged(seen: readonly Seen[]): Seen {
  if (seen.length === 1) return seen[0] as Seen
  const records = seen.flatMap((each) => each.records)
  const absent = seen.filter((each) => each.absent)
  if (2 * absent.length > seen.length) return { ...(absent[0] as Seen), records }
  const there = seen.filter((each) => !each.absent)
  const teleops = there.flatMap(({ teleop }) => teleop ?? [])
  const autos = there.map(({ autonomous }) => autonomous).filter((each) => each !== null)
  const fouls = there.flatMap((each) => each.fouls ?? [])
  return {
    records,
    absent: false,
    stopped: 2 * there.filter(({ stopped }) => stopped).length > there.length,
    autonomous: autos.length > 0 ? meanCounts(autos) : null,
    left: mostSaid(there.flatMap(({ left }) => left ?? [])),
    routine: mostSaid(there.flatMap(({ routine }) => routine ?? [])),
    startSpot: mostSaid(there.flatMap(({ startSpot }) => startSpot ?? [])),
    teleop: teleops.length > 0 ? meanTeleop(teleops) : null,
    finish: there.findLast(({ finish }) => finish !== undefined)?.finish,
    fouls: fouls.length > 0 ? { minor: mean(fouls, (f) => f.minor), major: mean(fouls, (f) => f.major) } : null,
  }
}

function mean<Of>(all: readonly Of[], of: (each: Of) => number): number {
  return all.reduce((sum, each) => sum + of(each), 0) / all.length
}

/** The first of those that were said most often. */
function mostSaid<Of>(said: readonly Of[]): Of | null {
  const times = (one: Of) => said.filter((each) => each === one).length
  return said.reduce<Of | null>((best, each) => (best === null || times(each) > times(best) ? each : best), null)
}

function meanCounts(all: readonly GoalCounts[]): GoalCounts {
  const sum: GoalCounts = {}
  for (const each of all) addAll(sum, each, 1 / all.length)
  return sum
}

function meanTeleop(all: readonly SeenTeleop[]): SeenTeleop {
  const weight = 1 / all.length
  const timed = all.filter(({ trips }) => trips.length > 0)
  const share = 1 / Math.max(1, timed.length)
  const firsts = all.flatMap(({ first }) => first ?? [])
  const sources: { [source: string]: number } = {}
  for (const each of all)
    for (const [id, n] of Object.entries(each.sources)) sources[id] = (sources[id] ?? 0) + n * weight
  const received = all.flatMap(({ defence }) => defence.received ?? [])
  return {
    active: mean(all, ({ active }) => active),
    goals: meanCounts(all.map(({ goals }) => goals)),
    departed: meanDeparture(all.map(({ departed }) => departed)),
    trips: timed.flatMap(({ trips }) => trips.map((trip) => ({ ...trip, weight: trip.weight * share }))),
    cycles: timed.flatMap(({ cycles }) => cycles.map((cycle) => ({ ...cycle, weight: cycle.weight * share }))),
    first:
      firsts.length === 0
        ? null
        : {
            seconds: mean(firsts, ({ seconds }) => seconds),
            pieces: mean(firsts, ({ pieces }) => pieces),
            preloaded: mostSaid(firsts.flatMap(({ preloaded }) => preloaded ?? [])),
          },
    sources,
    defence: {
      played: mean(all, ({ defence }) => defence.played),
      received:
        received.length === 0
          ? null
          : {
              seconds: mean(received, ({ seconds }) => seconds),
              attempts: mean(received, ({ attempts }) => attempts),
              freeSeconds: mean(received, ({ freeSeconds }) => freeSeconds),
              freeAttempts: mean(received, ({ freeAttempts }) => freeAttempts),
            },
    },
  }
}

function meanDeparture(all: readonly Departure[]): Departure {
  const said = all.filter((each) => typeof each === 'number')
  if (said.length > 0) return mean(said, (each) => each)
  return all.includes('never') ? 'never' : 'unknown'
}
