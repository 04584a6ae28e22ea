import type { Problem } from '../errors.ts'
import { idSet, idsOf, known, knownList, unique, within } from './checkIds.ts'
import type { QuickSheetRecord, QuickWay } from './quickSheet.ts'
import { problem } from './sentences.ts'
import type { Game } from './types.ts'

function checkPieces(game: Game, way: QuickWay): Problem[] {
  const pieces = new Set(game.sources.filter(({ id }) => way.sources.includes(id)).map(({ piece }) => piece))
  if (pieces.size === 0) return []
  return way.goals.flatMap((id, index) => {
    const goal = game.goals.find((candidate) => candidate.id === id)
    if (!goal || goal.accepts.some((piece) => pieces.has(piece))) return []
    return [problem(['goals', index], 'nothingAccepted', { goal: goal.name })]
  })
}

function checkWay(game: Game, way: QuickWay): Problem[] {
  return [
    ...knownList(way.sources, idSet(game.sources), { path: ['sources'], noun: 'source' }),
    ...knownList(way.goals, idSet(game.goals), { path: ['goals'], noun: 'goal' }),
    ...(way.finish === null ? [] : known(way.finish, idSet(game.finishes), { path: ['finish'], noun: 'finish' })),
    ...checkPieces(game, way),
  ]
}

/**
 * What a quick sheet of the right shape can still get wrong for its game.
 * Each problem has its path from the sheet's root and a sentence.
 */
export function checkQuickSheet(game: Game, sheet: QuickSheetRecord): Problem[] {
  return [
    ...unique(idsOf(sheet.ways, ['ways']), 'ways'),
    ...sheet.ways.flatMap((way, index) => within(['ways', index], checkWay(game, way))),
  ]
}
