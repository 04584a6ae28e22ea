import type { Game, Robot } from '../../src/model/documents/types.ts'
import { legReport } from '../../src/model/leg/index.ts'

export interface CycleTime {
  name: string
  mean: number
  sd: number
}

/** A robot's cycles with its full load, back and forth between every source and every goal: one spot for each. */
export function cycleTimes(game: Game, robot: Robot): CycleTime[] {
  return game.sources.flatMap((source) =>
    game.goals.flatMap((goal) =>
      (robot.score[goal.id] ?? []).flatMap((trip, entry) =>
        source.spots.slice(0, 1).flatMap(({ id: ramp }) =>
          goal.spots
            .filter(({ id }) => trip.spots === 'any' || trip.spots.includes(id))
            .slice(0, 1)
            .map(({ id: berth }) => {
              const load = robot.carries[source.piece] ?? 1
              const there = legReport(game, robot, {
                kind: 'collect',
                source: source.id,
                spot: ramp,
                from: berth,
                load,
              })
              const back = legReport(game, robot, {
                kind: 'score',
                goal: goal.id,
                entry,
                spot: berth,
                from: ramp,
                piece: source.piece,
                load,
              })
              // Legs are independent, so that their variances add.
              return {
                name: `${ramp} to ${berth}`,
                mean: there.mean + back.mean,
                sd: Math.hypot(there.sd, back.sd),
              }
            }),
        ),
      ),
    ),
  )
}
