import type { QuickSheetRecord, QuickWay } from '../../../src/model/documents/quickSheet.ts'
import type { Game, Goal } from '../../../src/model/documents/types.ts'
import type { WayResult } from '../../../src/model/sheet/index.ts'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import type { Explanation } from '../../words/explain.ts'
import { percent, plain, points } from '../../words/format.ts'
import { writeTime } from './times.ts'

/** How a way's points came about: what each goal and the finish bring, and the numbers typed. */
export function explainWay(of: {
  game: Game
  sheet: QuickSheetRecord
  way: QuickWay
  result: WayResult
  revision: number
  /** Strength of play, or reading of the rules, where it is not the sheet itself at middling play. */
  under?: string
}): Explanation {
  const { game, sheet, way, result } = of
  const texts = words().quickSheet
  const { ways } = texts
  const awards = game.goals.map(({ id, award }): [string, Goal['award']] => [id, award])
  const notes = (goal: string, pieces: number): string => {
    const award = awards.find(([id]) => id === goal)?.[1]
    return award?.kind === 'hold'
      ? texts.explain.held(points(pieces), plain(way.holdSeconds), texts.worth.hold(plain(award.teleopPerSecond)))
      : texts.explain.pieces(points(pieces))
  }
  return {
    title: of.under === undefined ? texts.explain.title(way.name) : texts.explain.titleUnder(way.name, of.under),
    result: texts.explain.points(points(result.points)),
    formula: texts.explain.formula,
    parts: [
      ...Object.entries(result.goals).map(([goal, found]) => ({
        label: placeName(game, goal),
        value: points(found.points),
        note: notes(goal, found.pieces),
      })),
      ...(way.finish === null ? [] : [{ label: placeName(game, way.finish), value: points(result.finish) }]),
      ...(way.extra === 0 ? [] : [{ label: texts.explain.extra, value: points(way.extra) }]),
    ],
    total: { label: texts.explain.total, value: points(result.points) },
    inputs: [
      { label: ways.load, value: String(way.load) },
      { label: ways.collect, value: writeTime(way.collect.time) },
      { label: ways.score, value: writeTime(way.score.time) },
      { label: ways.success, value: percent(way.score.success) },
      ...(awards.some(([id, award]) => award.kind === 'hold' && way.goals.includes(id))
        ? [{ label: ways.hold, value: plain(way.holdSeconds) }]
        : []),
      ...(way.finish === null
        ? []
        : [
            { label: ways.finishing, value: writeTime(way.finishing.time) },
            { label: ways.finishSuccess, value: percent(way.finishing.success) },
          ]),
    ],
    source: texts.explain.source(sheet.name, of.revision, game.name),
  }
}
