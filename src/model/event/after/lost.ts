import type { Game } from '../../documents/types.ts'
import { intervalsOf, lengthOf } from '../../scouting/seen/intervals.ts'
import type { Match, Observation } from '../../scouting/types.ts'
import { inOrder } from '../order.ts'
import { seatOf } from '../seats.ts'
import type { AfterLoss, AfterMisses } from './types.ts'

/** Seconds of one match of teleop that a robot could not play as it would have. */
interface Lost {
  stopped: number
  standing: number
  defended: number
}

/** What one record says. @param game its clock */
function lostIn({ clock }: Pick<Game, 'clock'>, observation: Observation): Lost {
  const teleop = { from: clock.auto + clock.pause, to: clock.auto + clock.pause + clock.teleop }
  const timeline = [...(observation.timeline ?? [])].sort((a, b) => a.elapsed - b.elapsed)
  if (timeline.length === 0) {
    const { stoppedAt, lostSeconds = 0 } = observation
    const stopped = stoppedAt === undefined ? 0 : Math.max(0, teleop.to - Math.max(teleop.from, stoppedAt))
    return { stopped, standing: lostSeconds, defended: 0 }
  }
  const stops = intervalsOf(timeline, 'stopped', teleop)
  const last = timeline.findLast(({ what }) => what === 'stopped' || what === 'running')
  const forGood = last?.what === 'stopped' ? stops.slice(-1) : []
  const standing = last?.what === 'stopped' ? stops.slice(0, -1) : stops
  return {
    stopped: lengthOf(forGood),
    standing: lengthOf(standing),
    defended: lengthOf(intervalsOf(timeline, 'defended', teleop)),
  }
}

export interface Watched {
  match: string
  records: readonly Observation[]
}

/** Matches of a team in the order of play, each with its records that count; practice and matches that are played again apart. */
export function matchesOf(
  team: string,
  { matches, watched }: { matches: readonly Match[]; watched: readonly { observation: Observation; team: string }[] },
): Watched[] {
  const voided = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const own = watched.filter((each) => each.team === team && each.observation.subject === 'robot')
  return matches
    .filter((match) => match.phase !== 'practice' && !voided.has(match.id))
    .filter((match) => seatOf(match, team) !== null)
    .toSorted(inOrder)
    .flatMap(({ id }) => {
      const records = own.flatMap(({ observation }) => (observation.match === id ? [observation] : []))
      return records.length > 0 ? [{ match: id, records }] : []
    })
}

/** Seconds a match by kind, the means of a match's records added up; those of slower trips stand elsewhere. */
export function lossesOf(game: Pick<Game, 'clock'>, matches: readonly Watched[]): AfterLoss[] {
  const came = matches.filter(({ records }) => !records.every(({ absent }) => absent))
  const each = came.map(({ records }) => {
    const all = records.map((record) => lostIn(game, record))
    const mean = (of: (one: Lost) => number) => all.reduce((sum, one) => sum + of(one), 0) / all.length
    return {
      stopped: mean((one) => one.stopped),
      standing: mean((one) => one.standing),
      defended: mean((one) => one.defended),
    }
  })
  return (['stopped', 'defended', 'standing'] as const).map((kind) => ({
    kind,
    seconds: each.reduce((sum, one) => sum + one[kind], 0) / Math.max(1, each.length),
    matches: each.filter((one) => one[kind] > 0).length,
  }))
}

/** Tries of teleop by goal, means of a match's records added up. */
export function missesOf(game: Game, matches: readonly Watched[]): AfterMisses[] {
  const start = game.clock.auto + game.clock.pause
  return game.goals.map(({ id: goal }) => {
    let [tried, missed] = [0, 0]
    for (const { records } of matches)
      for (const { timeline = [], counts = [] } of records) {
        const share = 1 / records.length
        for (const { what, goal: at, n = 1, elapsed } of timeline) {
          if (at !== goal || elapsed < start || (what !== 'scored' && what !== 'missed')) continue
          tried += share * n
          if (what === 'missed') missed += share * n
        }
        for (const count of counts) {
          if (count.goal !== goal || count.period !== 'teleop') continue
          tried += share * (count.scored + count.missed)
          missed += share * count.missed
        }
      }
    return { goal, tried, missed }
  })
}
