import { expect, test } from 'vitest'
import { fingerprint, source } from '../../../scripts/matchKernel.js'
import { eventsSource } from '../../../src/model/match/kernel/eventsBytes.ts'
import { Matches } from '../../../src/model/match/run.ts'
import { Roster } from '../../../src/model/match/setup.ts'
import { game, optionNamed } from '../reference.ts'

test('the compiled event loop was made from the text as it is', async () => {
  expect(fingerprint(await source())).toBe(eventsSource)
})

test('compiled and plain, matches come out the same to the last bit', { timeout: 60_000 }, () => {
  const ours = ['cormorant-best', 'petrel-best', 'gannet-keeper'].map(optionNamed)
  const theirs = ['dunlin-guess', 'petrel-defender', 'gannet-keeper'].map(optionNamed)
  const play = (quick: boolean) =>
    new Matches(new Roster(game, quick).setup(ours, theirs), { seed: 2 ** 40 + 7, checked: true }).play(0, 300)
  expect(play(false)).toEqual(play(true))
})
