import type { QuickLeg, QuickSheetRecord, QuickWay } from '../src/model/documents/quickSheet.ts'
import { strengthsAtFirst } from '../src/model/sheet/index.ts'

const guess = (seconds: number): QuickLeg => ({ time: { kind: 'fixed', seconds }, belief: null })

const between = (low: number, likely: number, high: number): QuickLeg => ({
  time: { kind: 'range', low, likely, high },
  belief: null,
})

const way = (id: string, name: string, rest: Omit<QuickWay, 'id' | 'name' | 'holdSeconds' | 'extra'>): QuickWay => ({
  id,
  name,
  holdSeconds: 5,
  extra: 0,
  ...rest,
})

/** What was on the whiteboard on the first Saturday: guesses, not measurements, of trips with driving. */
export const quickSheet: QuickSheetRecord = {
  format: 1,
  id: 'first-saturday',
  name: 'First Saturday',
  game: { id: 'breakwater', revision: 1 },
  strengths: strengthsAtFirst,
  ways: [
    way('piers-one', 'One by one to the piers', {
      sources: ['channel'],
      goals: ['piers'],
      finish: 'dry-dock',
      load: 1,
      collect: guess(7),
      score: { ...guess(6), success: 0.95 },
      finishing: { ...guess(4), success: 0.95 },
    }),
    way('piers-three', 'Three at a time to the piers', {
      sources: ['outer'],
      goals: ['piers'],
      finish: 'dry-dock',
      load: 3,
      collect: guess(17),
      score: { ...guess(13), success: 0.9 },
      finishing: { ...guess(5), success: 0.95 },
    }),
    way('gantry-dock', 'Gantry, then the dry dock', {
      sources: ['outer'],
      goals: ['gantry'],
      finish: 'dry-dock',
      load: 1,
      collect: guess(9),
      score: { ...guess(10), success: 0.75 },
      finishing: { ...guess(4), success: 0.95 },
    }),
    way('gantry-davit', 'Gantry, then the davit', {
      sources: ['outer'],
      goals: ['gantry'],
      finish: 'davit',
      load: 1,
      collect: guess(10),
      score: { ...guess(11), success: 0.7 },
      finishing: { ...between(12, 16, 25), success: 0.6 },
    }),
    way('lightship', 'Hold the lightship', {
      sources: ['channel', 'outer'],
      goals: ['lightship'],
      finish: null,
      load: 1,
      collect: guess(9),
      score: { ...guess(8), success: 0.85 },
      finishing: { ...guess(10), success: 0.8 },
    }),
  ],
}
