import type { OverriddenLeg } from '../../../src/model/documents/records.ts'
import type { Game, Robot } from '../../../src/model/documents/types.ts'
import type { LegRequest } from '../../../src/model/leg/types.ts'

/** All legs of a robot in a game that can be given an own time. */
export function legsOf(game: Game, robot: Robot): OverriddenLeg[] {
  return [
    ...game.sources.filter(({ id }) => robot.collect[id]).map(({ id }) => ({ kind: 'collect' as const, source: id })),
    ...game.goals.flatMap(({ id }) =>
      (robot.score[id] ?? []).map((_, entry) => ({ kind: 'score' as const, goal: id, entry })),
    ),
    ...game.finishes.filter(({ id }) => robot.finish[id]).map(({ id }) => ({ kind: 'finish' as const, finish: id })),
  ]
}

/** The leg from the first spot of each place that it usually starts from; none where the robot has no such leg. */
export function legRequests(game: Game, robot: Robot, leg: OverriddenLeg): LegRequest[] {
  const goals = game.goals.filter(({ id }) => robot.score[id])
  const sources = game.sources.filter(({ id }) => robot.collect[id])
  const first = (place: { spots: { id: string }[] }) => place.spots[0]!.id
  if (leg.kind === 'collect') {
    const source = sources.find(({ id }) => id === leg.source)
    if (!source) return []
    const load = robot.carries[source.piece] ?? 1
    const from = goals.filter(({ accepts }) => accepts.includes(source.piece)).map(first)
    return from.map((spot) => ({ kind: 'collect', source: source.id, spot: first(source), from: spot, load }))
  }
  if (leg.kind === 'score') {
    const goal = goals.find(({ id }) => id === leg.goal)
    const entry = robot.score[leg.goal]?.[leg.entry]
    if (!goal || !entry) return []
    const spot = entry.spots === 'any' ? first(goal) : (entry.spots[0] ?? first(goal))
    return sources
      .filter(({ piece }) => goal.accepts.includes(piece))
      .map((source) => ({
        kind: 'score',
        goal: goal.id,
        entry: leg.entry,
        spot,
        from: first(source),
        piece: source.piece,
        load: robot.carries[source.piece] ?? 1,
      }))
  }
  const finish = game.finishes.find(({ id }) => id === leg.finish)
  if (!finish || !robot.finish[leg.finish]) return []
  return goals.map((goal) => ({ kind: 'finish', finish: finish.id, spot: first(finish), from: first(goal) }))
}
