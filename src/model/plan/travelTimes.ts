import type { Drive, Game } from '../documents/types.ts'
import { fieldRoutes, placeOf, travel, travelSeconds } from '../field/index.ts'
import { ownTime } from '../field/ownTime.ts'
import type { TravelTime } from './graph.ts'

/** Travel times between starts and spots, each computed once; forgotten when field, places, footprint or drive change. */
export class TravelTimes {
  private key = ''
  private known = new Map<string, number>()

  for(game: Game, robot: { footprint: { length: number; width: number }; drive: Drive }): TravelTime {
    const { topSpeed, acceleration, deceleration, times = [] } = robot.drive
    const key = JSON.stringify([
      game.field,
      game.starts,
      game.sources,
      game.goals,
      game.finishes,
      robot.footprint,
      topSpeed,
      acceleration,
      deceleration,
      times,
    ])
    if (key !== this.key) this.known = new Map()
    this.key = key
    return (from, to) => {
      const pair = `${from}\n${to}`
      let seconds = this.known.get(pair)
      if (seconds === undefined) {
        seconds = ownTime(robot.drive, from, to) ?? secondsBetween(game, robot, from, to)
        this.known.set(pair, seconds)
      }
      return seconds
    }
  }
}

function secondsBetween(
  game: Game,
  robot: { footprint: { length: number; width: number }; drive: Drive },
  from: string,
  to: string,
): number {
  const start = placeOf(game, from)
  const end = placeOf(game, to)
  const route = start && end && fieldRoutes(game.field, robot.footprint).route(start.at, end.at)
  // Where there is none, the slower way says in words why not.
  return route ? travelSeconds(route.segments, robot.drive) : travel(game, robot, from, to).seconds
}
