import type { Game, Option, Point } from '../documents/types.ts'
import { placeOf } from '../field/places.ts'
import { polyline } from '../field/polyline.ts'
import { fieldRoutes } from '../field/routes.ts'
import type { Happening } from '../scouting/types.ts'
import { sampleMatches } from './timeline.ts'
import type { MatchEvent } from './types.ts'

/** A simulated match as somebody in the stands sees it, and what happened in it. */
export interface Film {
  robots: {
    came: boolean
    /** Where it is, in its own alliance's coordinates: [s, m, m], in the order of time; between two it goes straight. */
    track: [number, number, number][]
    /** What a scout could tap, in the order of time. */
    happened: Happening[]
  }[]
}

/**
 * The typical match of a seed, to train on.
 * @throws ModelError as `simulate` does
 */
export function filmOf(game: Game, { options, seed }: { options: readonly Option[]; seed: number }): Film {
  const level = game.bonuses.flatMap(({ atLeast }) => (typeof atLeast === 'number' ? [] : Object.keys(atLeast)))[0]
  const { typical } = sampleMatches({ game, level, ours: options.slice(0, 3), theirs: options.slice(3, 6), seed })
  return {
    robots: options.slice(0, 6).map((option, robot) => {
      const events = typical.events.filter((event) => event.robot === robot)
      return {
        came: typical.played[robot] === true,
        track: trackOf(game, option, events),
        happened: events.flatMap((event) => happeningsOf(game, event)).sort((a, b) => a.elapsed - b.elapsed),
      }
    }),
  }
}

function trackOf(game: Game, option: Option, events: readonly MatchEvent[]): Film['robots'][number]['track'] {
  const routes = fieldRoutes(game.field, option.robot.footprint)
  const at = (id: string): Point => placeOf(game, id)?.at ?? [0, 0]
  const auto = option.robot.autos.find(({ id }) => id === option.auto)
  const track: [number, number, number][] = [[0, ...at(option.start)]]
  const stop = events.find(({ kind }) => kind === 'stops')?.at ?? Number.POSITIVE_INFINITY
  const drive = (from: string, to: string, [begins, ends]: [number, number]) => {
    const found = routes.route(at(from), at(to))
    const way = found ? polyline(at(from), found.segments) : [at(from), at(to)]
    const whole = lengthOf(way)
    track.push([begins, ...at(from)])
    let gone = 0
    for (const [index, point] of way.slice(1).entries()) {
      gone += Math.hypot(point[0] - way[index]![0], point[1] - way[index]![1])
      const time = begins + (ends - begins) * (whole > 0 ? gone / whole : 1)
      // Whoever stops for good does so on its way.
      if (time > stop) return
      track.push([time, ...point])
    }
  }
  if (auto) drive(option.start, auto.endsAt, [0, game.clock.auto])
  for (const event of events) if (event.kind === 'drives') drive(event.from, event.to, [event.at, event.until])
  return track.map(([time, x, y]) => [rounded(time), rounded(x), rounded(y)])
}

const rounded = (value: number) => Math.round(value * 100) / 100

const lengthOf = (way: readonly Point[]): number =>
  way.slice(1).reduce((sum, point, index) => sum + Math.hypot(point[0] - way[index]![0], point[1] - way[index]![1]), 0)

function happeningsOf(game: Game, event: MatchEvent): Happening[] {
  const elapsed = rounded(event.at)
  switch (event.kind) {
    case 'places':
      return [{ elapsed, what: 'scored', goal: event.place }]
    case 'works':
      return game.sources.some(({ id }) => id === event.place)
        ? [{ elapsed: rounded(event.until), what: 'collected', source: event.place }]
        : []
    case 'drives':
      return game.finishes.some(({ id }) => id === event.place) ? [{ elapsed, what: 'left' }] : []
    case 'stops':
      return [{ elapsed, what: 'stopped' }]
    default:
      return []
  }
}
