import type { ComparisonRecord, OptionReference } from '../src/model/documents/records.ts'
import { game } from './game.ts'
import { optionOf } from './resolve.ts'

const first = (option: string): OptionReference => ({
  option: { id: option, revision: 1 },
  design: { id: optionOf(option).robot.id, revision: 1 },
})

/** Who plays with and against each of the two: robots of the kinds that the season knows. */
export const standingsField = {
  partners: ['kittiwake-best', 'puffin-best'],
  opponents: ['shearwater-best', 'kittiwake-best', 'puffin-best'],
  level: 'local',
  replicates: 20_000,
}

/**
 * A question that points and ranking points answer differently: the robot without the hook scores more, and wins more, but a
 * hang on the davit is what brings an alliance with one docked partner to the points of ‘All berthed’.
 */
export const standings: ComparisonRecord = {
  format: 1,
  id: 'hook-for-the-standings',
  name: 'The hook for the standings',
  question: 'Is the davit hook worth building for the standings, although practice brings more points?',
  game: { id: game.id, revision: 1 },
  options: ['shearwater-best', 'kittiwake-best'].map(first),
  inputs: [],
  breakEven: null,
  seed: 1,
  objective: 'rankingPoints',
  field: {
    ...standingsField,
    partners: standingsField.partners.map(first),
    opponents: standingsField.opponents.map(first),
  },
  result: null,
}
