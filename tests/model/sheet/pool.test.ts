import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Guess, pool, quantile } from '../../../src/model/sheet/index.ts'

const thirty: [number, number, number][] = [
  [3.6, 6.3, 11.6],
  [2.8, 4.6, 6.8],
  [5.3, 7.7, 12],
  [2.4, 3.1, 6.9],
  [4.7, 5.4, 9.1],
  [3.8, 5, 8],
  [2.3, 5.2, 10.3],
  [4.5, 6.5, 12.2],
  [2.2, 3.8, 6.9],
  [4.2, 6.7, 10.9],
  [2.3, 4.4, 5.2],
  [2.5, 4, 8.4],
  [4.1, 7.4, 11.5],
  [6.1, 9, 15],
  [2.6, 4, 9],
  [3.1, 5.6, 7.7],
  [5.1, 7.4, 10],
  [6.7, 10.3, 14.5],
  [4.9, 8, 8.6],
  [4, 5.5, 8.5],
  [6.9, 10.8, 12.2],
  [2.2, 3.1, 4.2],
  [6.3, 8.3, 9.1],
  [3.4, 6.5, 11.2],
  [2.7, 3.7, 4.9],
  [2.6, 4.8, 6.7],
  [3.5, 4.1, 6.8],
  [6.1, 8.9, 14.2],
  [2.9, 6.1, 7],
  [4.9, 7.4, 10.4],
]
const guesses = thirty.map(([low, likely, high]): Guess => ({ low, likely, high }))

test('quantiles are those of Python’s statistics.quantiles(method="inclusive") and of numpy.percentile', () => {
  const column = (key: keyof Guess) => guesses.map((guess) => guess[key])
  // Python 3.11.7 and NumPy 2.4.6 for the thirty guesses above agree on these.
  expect(quantile(column('low'), 0.1)).toBeCloseTo(2.3, 12)
  expect(quantile(column('likely'), 0.1)).toBeCloseTo(3.79, 12)
  expect(quantile(column('likely'), 0.5)).toBeCloseTo(5.85, 12)
  expect(quantile(column('likely'), 0.9)).toBeCloseTo(8.91, 12)
  expect(quantile(column('high'), 0.9)).toBeCloseTo(12.4, 12)
})

test('thirty guesses become the range of trips and the belief about the usual one', () => {
  expect(pool(guesses)).toEqual({
    range: { low: 2.3, likely: 5.9, high: 12.4 },
    belief: { low: 3.8, likely: 5.9, high: 8.9 },
  })
})

test('a single guess is the range, and leaves no doubt about the usual trip: nobody else was asked', () => {
  expect(pool([{ low: 4, likely: 6, high: 11 }])).toEqual({
    range: { low: 4, likely: 6, high: 11 },
    belief: { low: 6, likely: 6, high: 6 },
  })
})

test('one joker among eleven moves neither end', () => {
  const ten = Array.from({ length: 10 }, (): Guess => ({ low: 5, likely: 8, high: 12 }))
  expect(pool([...ten, { low: 0, likely: 500, high: 600 }]).range).toEqual({ low: 5, likely: 8, high: 12 })
})

test('whoever guesses, low is at most likely and likely at most high', () => {
  const anyGuess = fc
    .tuple(
      fc.double({ min: 0, max: 600, noNaN: true }),
      fc.double({ min: 0, max: 600, noNaN: true }),
      fc.double({ min: 0, max: 600, noNaN: true }),
    )
    .map((three) => three.sort((a, b) => a - b))
    .map(([low, likely, high]): Guess => ({ low: low!, likely: likely!, high: high! }))
  fc.assert(
    fc.property(fc.array(anyGuess, { minLength: 1, maxLength: 40 }), (all) => {
      for (const { low, likely, high } of Object.values(pool(all))) {
        expect(low).toBeLessThanOrEqual(likely)
        expect(likely).toBeLessThanOrEqual(high)
      }
    }),
  )
})

test('of nobody there is no quantile', () => {
  expect(() => pool([])).toThrow(RangeError)
})
