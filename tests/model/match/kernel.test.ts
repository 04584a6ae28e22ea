import { expect, test } from 'vitest'
import { fingerprint, source } from '../../../scripts/matchKernel.js'
import { eventsSource } from '../../../src/model/match/kernel/eventsBytes.ts'
import { Matches } from '../../../src/model/match/run.ts'
import { Roster } from '../../../src/model/match/setup.ts'
import { game, optionNamed } from '../reference.ts'
import { drawn, seen } from './observed.ts'

test('the compiled event loop was made from the text as it is', async () => {
  expect(fingerprint(await source())).toBe(eventsSource)
})

test('compiled and plain, matches come out the same to the last bit', { timeout: 60_000 }, () => {
  const ours = ['cormorant-best', 'petrel-best', 'gannet-keeper'].map(optionNamed)
  const theirs = ['dunlin-guess', 'petrel-defender', 'gannet-keeper'].map(optionNamed)
  const observed = [ours[2]!, seen('one', { form: { spread: 1.2 } }), drawn('two')]
  const [compiled, plain] = [new Roster(game), new Roster(game, false)]
  for (const others of [theirs, observed]) {
    const play = (roster: Roster) =>
      new Matches(roster.setup(ours, others), { seed: 2 ** 40 + 7, checked: true }).play(0, 300)
    expect(play(plain)).toEqual(play(compiled))
  }
})
