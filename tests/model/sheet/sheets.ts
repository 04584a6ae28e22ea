import type { QuickSheetRecord, QuickWay } from '../../../src/model/documents/index.ts'
import { strengthsAtFirst } from '../../../src/model/sheet/index.ts'

export const seconds = (value: number): QuickWay['collect'] => ({
  time: { kind: 'fixed', seconds: value },
  belief: null,
})

/** A way to play the harbour game of the tests: pieces from the slip to the pier. */
export const lowWay = (changes: Partial<QuickWay> = {}): QuickWay => ({
  id: 'low',
  name: 'All low',
  sources: ['slip'],
  goals: ['pier'],
  finish: null,
  load: 1,
  collect: seconds(6),
  score: { ...seconds(4), success: 1 },
  finishing: { ...seconds(5), success: 1 },
  holdSeconds: 5,
  extra: 0,
  ...changes,
})

export const sheetOf = (ways: QuickWay[], game = 'harbour'): QuickSheetRecord => ({
  format: 1,
  id: 'first',
  name: 'First Saturday',
  game: { id: game, revision: 1 },
  strengths: strengthsAtFirst,
  ways,
})
