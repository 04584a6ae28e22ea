import jsQR from 'jsqr'
import { describe, expect, test } from 'vitest'
import { breakwater } from '../../seed/index.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { optionOf, type Ranked, strengthsAtFirst } from '../../src/model/sheet/index.ts'
import { qrModules } from '../../web/charts/QrCode.tsx'
import { readGuess } from '../../web/screens/guess/GuessForm.tsx'
import { explainWay } from '../../web/screens/quickSheet/explainWay.ts'
import { comparisonOf, grownFrom } from '../../web/screens/quickSheet/grown.ts'
import { leadWords, strengthWords } from '../../web/screens/quickSheet/ranking.ts'
import { readTime, writeTime } from '../../web/screens/quickSheet/times.ts'
import { chooseLanguage } from '../../web/words/catalogue.ts'
import { sheetAnswer } from '../../web/worker/sheet.ts'
import { seconds } from '../model/sheet/sheets.ts'

const { game, quickSheet } = breakwater

describe('a time is typed', () => {
  test.each([
    ['8', { kind: 'fixed', seconds: 8 }],
    [' 7,5 s ', { kind: 'fixed', seconds: 7.5 }],
    ['5 8 14', { kind: 'range', low: 5, likely: 8, high: 14 }],
    ['5-8-14', { kind: 'range', low: 5, likely: 8, high: 14 }],
    ['5 – 8,5 – 14 s', { kind: 'range', low: 5, likely: 8.5, high: 14 }],
  ] as const)('as ‘%s’', (text, time) => {
    expect(readTime(text)).toEqual({ time })
    expect(readTime(writeTime(time))).toEqual({ time })
  })
  test.each([
    ['', 'neither one number nor three'],
    ['fast', 'neither one number nor three'],
    ['5 8', 'neither one number nor three'],
    ['8 5 14', 'in this order'],
    ['-1', 'Between 0 and 600'],
    ['1e9', 'neither one number nor three'],
    ['601', 'Between 0 and 600'],
  ])('not as ‘%s’', (text, words) => {
    const read = readTime(text)
    expect('error' in read ? read.error : read).toContain(words)
  })
})

describe('what the order hangs on, in words', () => {
  test('with a decimal comma a lead is still a lead', async () => {
    await chooseLanguage(['de'])
    try {
      expect(leadWords(sheet, ranked(20, 17.6))).toBe('Mittlere Stärke: „A“ führt mit 2,4 Punkten je Match.')
      expect(leadWords(sheet, ranked(20, 20))).toBe('Mittlere Stärke: „A“ und „B“ liegen gleichauf.')
    } finally {
      await chooseLanguage(['en'])
    }
  })

  const sheet = {
    ...quickSheet,
    ways: quickSheet.ways.slice(0, 2).map((way, index) => ({ ...way, name: 'AB'[index]! })),
  }
  const ranked = (a: number, b: number): Ranked[] =>
    [a, b].map((points, index) => ({ id: sheet.ways[index]!.id, points }))

  test('the leader and its lead, or that they are even', () => {
    expect(leadWords(sheet, ranked(20, 17.6))).toBe('Middling play: ‘A’ leads by 2.4 points a match.')
    expect(leadWords(sheet, ranked(20.01, 20.04))).toBe('Middling play: ‘A’ and ‘B’ come out even.')
    // Shown as 20.1 and 20.0, and still a lead of nothing.
    expect(leadWords(sheet, ranked(20.06, 20.04))).toBe('Middling play: ‘A’ and ‘B’ come out even.')
    expect(leadWords(sheet, ranked(20, 10).slice(0, 1))).toBeNull()
  })
  test('the same order at all three strengths is worth saying', () => {
    const cases = { weak: ranked(10, 8), middling: ranked(20, 17), strong: ranked(30, 29) }
    expect(strengthWords(sheet, cases)?.headline).toMatch(/^The order is the same at all three strengths/)
  })
  test('while every way is even, nothing is said of an order', () => {
    expect(
      strengthWords(sheet, { weak: ranked(10, 10), middling: ranked(20, 20.01), strong: ranked(30, 30) }),
    ).toBeNull()
  })
  test('and so is where it turns', () => {
    const cases = { weak: ranked(10, 8), middling: ranked(20, 17), strong: ranked(30, 31) }
    expect(strengthWords(sheet, cases)).toEqual({
      headline: 'Which way is best depends on how well it is played:',
      flips: ['‘A’ is ahead of ‘B’ in middling play and behind in strong play.'],
    })
  })
})

test('what a goal pays by the second is the product that the opened number says', () => {
  // 6.8 pieces, the last one scored long before the end: 6.8 × 5 s × 1 point.
  const way = {
    ...quickSheet.ways[0]!,
    goals: ['lightship'],
    finish: null,
    load: 1,
    extra: 0,
    holdSeconds: 5,
    collect: seconds(8),
    score: { ...seconds(8), success: 0.85 },
  }
  const strengths = [strengthsAtFirst.middling]
  const answer = sheetAnswer({ games: [game], ways: [way], strengths })[0]![0]![0]!
  if (!('result' in answer)) throw new Error('This way can be played')
  const { result } = answer
  const told = explainWay({ game, sheet: quickSheet, way, result, revision: 1 })
  expect(told.parts.map(({ value, note }) => [value, note])).toEqual([
    ['34.0', '6.8 pieces a match × up to 5 s × 1 point a second held'],
  ])
  expect(told.inputs).toContainEqual({ label: 'Seconds that one piece keeps paying', value: '5' })
})

test('the season’s sheet: the gantry leads in weak and middling play, three at a time in strong', () => {
  const strengths = [strengthsAtFirst.weak, strengthsAtFirst.middling, strengthsAtFirst.strong]
  const [answers] = sheetAnswer({ games: [game], ways: quickSheet.ways, strengths })
  const best = answers!.map((ways) => {
    const all = ways.map((answer) => ('result' in answer ? answer.result.points : Number.NaN))
    return quickSheet.ways[all.indexOf(Math.max(...all))]!.id
  })
  expect(best).toEqual(['gantry-dock', 'gantry-dock', 'piers-three'])
})

test('a way that the rules do not allow is answered with a sentence, the others with points', () => {
  const ways = [{ ...quickSheet.ways[0]!, goals: ['moon'] }, quickSheet.ways[1]!]
  const [[[wrong, right]]] = sheetAnswer({ games: [game], ways, strengths: [strengthsAtFirst.middling] }) as [
    [[object, object]],
  ]
  expect(wrong).toMatchObject({ problem: { message: 'There is no goal with the id “moon”' } })
  expect(right).toHaveProperty('result')
})

describe('a sheet grows into designs', () => {
  const asked = {
    ...quickSheet.ways[3]!,
    finishing: {
      time: { kind: 'range', low: 10, likely: 15, high: 30 } as const,
      belief: { low: 12, likely: 15, high: 21 },
      success: 0.6,
    },
  }
  const sure = { ...quickSheet.ways[0]!, collect: { ...seconds(7), belief: { low: 7, likely: 7, high: 7 } } }

  test('whose plan is worth what the sheet says', () => {
    const { design, option } = grownFrom(game, asked)
    const planner = new Planner(game)
    const grown = planner.value({ ...option.option, robot: design.robot })
    expect(grown).toBeCloseTo(planner.value(optionOf(game, asked)), 9)
    const answer = sheetAnswer({ games: [game], ways: [asked], strengths: [{ times: 1, success: 1 }] })[0]![0]![0]!
    expect('result' in answer && answer.result.points).toBeCloseTo(grown, 9)
  })

  test('and the group’s doubt goes along as a factor on the leg; what nobody doubts does not', () => {
    const record = comparisonOf(
      quickSheet,
      { id: game.id, revision: 1 },
      [sure, asked].map((way) => grownFrom(game, way)),
    )
    expect(record.inputs).toEqual([
      {
        id: 'Gantry, then the davit: finishing',
        paths: ['/options/1/robot/finish/davit/whole'],
        as: 'factor',
        low: 0.8,
        likely: 1,
        high: 1.4,
      },
    ])
  })
})

test('a phone’s guess is answered beside the field that is wrong', () => {
  expect(readGuess({ low: '3', likely: '5,5', high: '9' })).toEqual({ guess: { low: 3, likely: 5.5, high: 9 } })
  const wrong = readGuess({ low: '', likely: 'long', high: '601' })
  expect('errors' in wrong && Object.keys(wrong.errors)).toEqual(['low', 'likely', 'high'])
  expect(readGuess({ low: '6', likely: '5', high: '9' })).toHaveProperty('errors.likely')
  expect(readGuess({ low: '3', likely: '5', high: '4' })).toHaveProperty('errors.high')
})

test('the picture to scan is read by an independent reader as the address', () => {
  const address = 'http://192.168.178.23:3000/guess/K7M3PX'
  const modules = qrModules(address)
  const [scale, quiet] = [4, 4]
  const size = (modules.length + 2 * quiet) * scale
  const pixels = new Uint8ClampedArray(size * size * 4).fill(255)
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      const dark = modules[Math.floor(y / scale) - quiet]?.[Math.floor(x / scale) - quiet]
      if (dark) pixels.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3)
    }
  expect(jsQR(pixels, size, size)?.data).toBe(address)
})
