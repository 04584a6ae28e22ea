import { afterAll, expect, test } from 'vitest'
import { type AirPlan, keptAir } from '../../../src/model/timing/index.ts'
import { lossWords } from '../../../web/screens/designs/air/airWords.ts'
import { allWords, chooseLanguage } from '../../../web/words/catalogue.ts'

afterAll(() => chooseLanguage(['en']))

const lost = (lostAt: number | null, withThis: number) =>
  keptAir('one', { possible: true, lostAt, points: { always: 30, withThis, withOneTankMore: 30 } } as AirPlan)

test('a record says when the working pressure is lost and what that costs, and nothing where it lasts', async () => {
  await allWords()
  expect(lossWords(lost(null, 30), 100)).toBeNull()
  expect(lossWords(lost(42, 27.5), 100)).toMatch(
    /^The working pressure is lost with 42\.0\ss left; that costs 2\.5 points/,
  )
  expect(lossWords(lost(100, 27.5), 100)).toMatch(/^The working pressure is lost before teleop begins; that costs 2\.5/)
  expect(lossWords(lost(42, 29.99), 100)).toMatch(/left; that costs less than 0\.05 points a match\.$/)
  await chooseLanguage(['de'])
  await allWords()
  expect(lossWords(lost(42, 27.5), 100)).toMatch(/42,0\ss bleiben; das kostet 2,5 Punkte/)
})
