import type { Game } from '../../../src/model/documents/types.ts'
import type { Both } from '../../../src/model/match/types.ts'
import type { Reel } from './replay.ts'

/**
 * Points of leaving, of pieces by their goal's award, of holding by the strict majority, of sets and of finishes; at the end
 * what fouls give to the others, bonuses and adjustments, so that it is the match's score.
 */
export function pointsAt(
  { game, timeline, end }: Reel,
  time: number,
  pieces: Both<{ [goal: string]: number }>,
): Both<number> {
  const points = { ours: 0, theirs: 0 }
  const { auto, pause } = game.clock
  for (const event of timeline.events) {
    if (event.at > time) break
    const side = event.robot < 3 ? 'ours' : 'theirs'
    if (event.kind === 'leaves') points[side] += game.leave?.points ?? 0
    if (event.kind === 'fouls')
      points[side === 'ours' ? 'theirs' : 'ours'] += game.fouls.minor * event.minor + game.fouls.major * event.major
    if (event.kind === 'finishes') points[side] += game.finishes.find(({ id }) => id === event.place)?.points ?? 0
    if (event.kind !== 'places') continue
    const award = game.goals.find(({ id }) => id === event.place)?.award
    if (award?.kind === 'each') points[side] += event.at <= auto ? award.auto : award.teleop
  }
  for (const goal of game.goals) {
    if (goal.award.kind !== 'hold') continue
    const { autoPerSecond, teleopPerSecond } = goal.award
    const worth = (from: number, to: number) =>
      autoPerSecond * overlap(from, to, [0, auto]) +
      teleopPerSecond * overlap(from, to, [auto + pause, Number.POSITIVE_INFINITY])
    const held = { ours: 0, theirs: 0 }
    let lead = 0
    let since = 0
    const until = (at: number) => {
      if (lead !== 0) held[lead > 0 ? 'ours' : 'theirs'] += worth(since, at)
      since = at
    }
    for (const event of timeline.events) {
      if (event.at > time) break
      if (event.kind !== 'places' || event.place !== goal.id) continue
      until(event.at)
      lead += event.robot < 3 ? 1 : -1
    }
    until(time)
    points.ours += Math.floor(held.ours + 1e-9)
    points.theirs += Math.floor(held.theirs + 1e-9)
  }
  for (const side of ['ours', 'theirs'] as const) {
    points[side] += setPoints(game, pieces[side])
    const { bonuses, adjusted } = timeline.atEnd[side]
    if (time >= end) points[side] += bonuses + adjusted
  }
  return points
}

/** Every full set pays as often as it is full. */
const setPoints = (game: Game, pieces: { [goal: string]: number }): number =>
  game.sets.reduce((sum, { needs, points }) => {
    const times = Object.entries(needs).map(([goal, count]) => Math.floor((pieces[goal] ?? 0) / count))
    return sum + (times.length > 0 ? Math.min(...times) * points : 0)
  }, 0)

const overlap = (from: number, to: number, [start, end]: readonly [number, number]): number =>
  Math.max(0, Math.min(to, end) - Math.max(from, start))
