import type { CollectTrip, FinishTrip, Game, Robot, ScoreEntry } from '../../../src/model/documents/types.ts'

const guess = { kind: 'range', low: 5, likely: 8, high: 14 } as const

/** What a robot that has just learnt something does: one guess for the whole leg, tries that may fail. */
export const firstCollect: CollectTrip = {
  whole: guess,
  success: 0.9,
  retry: { kind: 'range', low: 0.8, likely: 1.5, high: 3 },
}
export const firstScore: ScoreEntry = { whole: guess, spots: 'any', success: 0.85 }
export const firstFinish: FinishTrip = { whole: guess, success: 0.8, otherwise: null }

const without = <T>(map: { [key: string]: T }, key: string): { [key: string]: T } =>
  Object.fromEntries(Object.entries(map).filter(([other]) => other !== key))

/** A robot that collects at a source, or does not. It then carries the piece, one where it carried none. */
export function collecting(game: Game, robot: Robot, source: string, can: boolean): Robot {
  if (!can) return { ...robot, collect: without(robot.collect, source) }
  const piece = game.sources.find(({ id }) => id === source)?.piece
  const carries = piece === undefined ? robot.carries : { [piece]: 1, ...robot.carries }
  return { ...robot, carries, collect: { ...robot.collect, [source]: firstCollect } }
}

/** A robot that scores at a goal in so many ways; none: it does not. */
export const scoring = (robot: Robot, goal: string, entries: ScoreEntry[]): Robot => ({
  ...robot,
  score: entries.length === 0 ? without(robot.score, goal) : { ...robot.score, [goal]: entries },
})

/** A robot that finishes there, or does not. */
export function finishing(robot: Robot, finish: string, can: boolean): Robot {
  if (can) return { ...robot, finish: { ...robot.finish, [finish]: firstFinish } }
  return { ...robot, finish: without(robot.finish, finish) }
}
