import type { QuickWay } from '../documents/quickSheet.ts'
import type { Game, Option, Robot } from '../documents/types.ts'

/** What points by hand are called in the option that a way grows into, where they can be named better. */
const extraLabel = 'By hand, from the quick sheet'

/** A robot that can what the way needs and no more, each leg with its one number; drive and size are usual ones. */
export function designOf(game: Game, way: QuickWay): Robot {
  const sources = game.sources.filter(({ id }) => way.sources.includes(id))
  const goals = game.goals.filter(({ id }) => way.goals.includes(id))
  const piece = sources
    .map((source) => source.piece)
    .find((each) => goals.some(({ accepts }) => accepts.includes(each)))
  return {
    format: 1,
    id: way.id,
    name: way.name,
    footprint: { length: 0.85, width: 0.85 },
    drive: {
      topSpeed: 3.5,
      acceleration: 3,
      deceleration: 4,
      pace: { kind: 'range', low: 1, likely: 1.15, high: 1.6 },
    },
    form: { spread: 1 },
    carries: Object.fromEntries(sources.map((source) => [source.piece, way.load])),
    preload: piece === undefined ? null : { piece, count: 1 },
    collect: Object.fromEntries(sources.map(({ id }) => [id, { whole: way.collect.time, success: 1, retry: null }])),
    score: Object.fromEntries(
      goals.map(({ id }) => [id, [{ whole: way.score.time, spots: 'any' as const, success: way.score.success }]]),
    ),
    finish:
      way.finish === null
        ? {}
        : { [way.finish]: { whole: way.finishing.time, success: way.finishing.success, otherwise: null } },
    autos: [],
    reliability: { absent: 0, stops: 0 },
    fouls: { minorPerMatch: 0, majorPerMatch: 0 },
    defence: { slowdown: 0, minorPerMinute: 0, majorPerMinute: 0 },
  }
}

/** The way as an option of the model: that robot, from the first start, with one piece in hand, finishing when it pays. */
export function optionOf(game: Game, way: QuickWay): Option {
  const holding = game.goals.filter(({ id, award }) => award.kind === 'hold' && way.goals.includes(id))
  return {
    format: 1,
    id: way.id,
    name: way.name,
    robot: designOf(game, way),
    start: game.starts[0]?.id ?? '',
    auto: null,
    role: {
      sources: way.sources,
      goals: way.goals,
      finishes: way.finish === null ? [] : [way.finish],
      defend: null,
    },
    finish: { mode: 'best' },
    holdSeconds: Object.fromEntries(holding.map(({ id }) => [id, way.holdSeconds])),
    adjust: way.extra === 0 ? [] : [{ label: extraLabel, points: way.extra, rankingPoints: 0 }],
  }
}
