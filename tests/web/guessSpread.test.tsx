import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { pool } from '../../src/model/sheet/index.ts'
import { GuessSpread } from '../../web/charts/GuessSpread.tsx'

const guesses = [
  { low: 3, likely: 7, high: 21 },
  { low: 4, likely: 8, high: 12 },
  { low: 5, likely: 9, high: 13 },
]
const picture = (width: number) =>
  // One element a line, so that a changed snapshot can be read.
  renderToStaticMarkup(<GuessSpread guesses={guesses} pooled={pool(guesses).range} width={width} />).replaceAll(
    '><',
    '>\n<',
  )

test('every guess is a line with a dot, and what they say together stands above them', () => {
  expect(picture(300)).toMatchSnapshot()
})

test('positions are to scale: 0 at 8 px and the longest guess, 21 s, at 292 px', () => {
  const at = (seconds: number) => Math.round((8 + (seconds / 21) * 284) * 100) / 100
  const dots = [...picture(300).matchAll(/<circle cx="([\d.]+)"/g)].map(([, x]) => Number(x))
  expect(dots).toEqual([at(7), at(8), at(9)])
  const lines = [...picture(300).matchAll(/<line x1="([\d.]+)" x2="([\d.]+)" y1="([\d.]+)" y2="\3"/g)]
  expect(lines.map(([, low, high]) => [Number(low), Number(high)])).toEqual([
    [at(3), at(21)],
    [at(4), at(12)],
    [at(5), at(13)],
  ])
})
