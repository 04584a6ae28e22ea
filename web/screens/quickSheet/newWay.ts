import type { QuickSheetRecord, QuickWay } from '../../../src/model/documents/quickSheet.ts'
import type { Game, Goal, Source } from '../../../src/model/documents/types.ts'
import { strengthsAtFirst } from '../../../src/model/sheet/index.ts'
import { idFrom } from '../../data/identity.ts'

const leg = (seconds: number): QuickWay['collect'] => ({ time: { kind: 'fixed', seconds }, belief: null })

function firstPair(game: Game): { source: Source; goal: Goal } | null {
  for (const source of game.sources)
    for (const goal of game.goals) if (goal.accepts.includes(source.piece)) return { source, goal }
  return null
}

/** A way to begin from: the first source with a goal that takes its pieces, eight seconds each way. */
export function newWay(game: Game, name: string): QuickWay {
  const pair = firstPair(game)
  return {
    id: idFrom(name),
    name,
    sources: pair ? [pair.source.id] : [],
    goals: pair ? [pair.goal.id] : [],
    finish: null,
    load: 1,
    collect: leg(8),
    score: { ...leg(8), success: 0.85 },
    finishing: { ...leg(10), success: 0.8 },
    holdSeconds: 5,
    extra: 0,
  }
}

export const newSheet = (game: { id: string; revision: number }, name: string): QuickSheetRecord => ({
  format: 1,
  id: idFrom(name),
  name,
  game,
  strengths: strengthsAtFirst,
  ways: [],
})
