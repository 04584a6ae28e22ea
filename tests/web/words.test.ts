import { describe, expect, onTestFinished, test } from 'vitest'
import { breakwater, optionOf } from '../../seed/index.ts'
import type { CompareReport, Input } from '../../src/model/compare/types.ts'
import { Planner } from '../../src/model/plan/index.ts'
import { chooseUnits } from '../../web/units/system.ts'
import { explainPlan } from '../../web/words/explain.ts'
import { percent, plain, points, seconds, signedPoints } from '../../web/words/format.ts'
import { inputWords } from '../../web/words/inputs.ts'
import { measureWords } from '../../web/words/measure.ts'
import { headline, sureness, turning, verdict } from '../../web/words/verdict.ts'

const nbsp = '\u00a0'
const options = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
const documents = { game: breakwater.game, options }
const hang: Input = {
  id: 'Hang success',
  paths: ['/options/0/robot/finish/davit/success'],
  as: 'value',
  low: 0.5,
  likely: 0.7,
  high: 0.95,
}

const report: CompareReport = {
  options: [
    { id: 'shearwater-best', mean: 57.36, sd: 12, p10: 41, p50: 57, p90: 73 },
    { id: 'kittiwake-best', mean: 59.44, sd: 11, p10: 45, p50: 59, p90: 74 },
  ],
  beats: { 'shearwater-best': { 'kittiwake-best': 0.45 }, 'kittiwake-best': { 'shearwater-best': 0.55 } },
  breakEven: {
    input: 'Hang success',
    crossings: [{ value: 0.783, from: 'kittiwake-best', to: 'shearwater-best', jump: false }],
  },
  belief: {
    best: { 'shearwater-best': 0.29, 'kittiwake-best': 0.71 },
    regret: { 'shearwater-best': 2.4, 'kittiwake-best': 0.4 },
    evpi: { value: 0.4, standardError: 0.02 },
    evppi: { 'Hang success': { value: 0.31, standardError: 0.02 } },
    evsi: {
      'Hang success': [
        [4, 0.12],
        [12, 0.25],
        [64, 0.3],
      ],
    },
    gridError: 0.01,
    form: { 'shearwater-best': -0.6, 'kittiwake-best': -0.4 },
  },
}

describe('numbers have no false digits', () => {
  test('points to 0.1 with a true minus, and no minus zero', () => {
    expect(points(12.345)).toBe('12.3')
    expect(points(-0.04)).toBe('0.0')
    expect(signedPoints(2.08)).toBe('+2.1')
    expect(signedPoints(-2.08)).toBe('\u22122.1')
    expect(signedPoints(0.04)).toBe('0.0')
  })
  test('probabilities to 1 %, never a false certainty', () => {
    expect(percent(0.623)).toBe(`62${nbsp}%`)
    expect(percent(0.999)).toBe(`over 99${nbsp}%`)
    expect(percent(0.001)).toBe(`under 1${nbsp}%`)
    expect(percent(1)).toBe(`100${nbsp}%`)
    expect(percent(0)).toBe(`0${nbsp}%`)
  })
  test('seconds to 0.1; other numbers as short as they are', () => {
    expect(seconds(4.25)).toBe(`4.3${nbsp}s`)
    expect(plain(1.1)).toBe('1.1')
    expect(plain(100)).toBe('100')
    for (const digits of [0, 1, 2]) expect(plain(340, digits)).toBe('340')
    expect(plain(1200, 0)).toBe('1200')
    expect(plain(339.6, 0)).toBe('340')
    expect(plain(0, 0)).toBe('0')
  })
})

describe('the answer in words', () => {
  const found = verdict(report)!

  test('names the best option and its lead', () => {
    expect(headline(found, options)).toBe('Kittiwake, finish when it pays: +2.1 points a match')
  })
  test('says that two are level where no tenth of a point is between them', () => {
    const options = [optionOf('shearwater-best'), optionOf('kittiwake-best')]
    expect(headline({ ...found, lead: 0.04 }, options)).toBe(
      '‘Kittiwake, finish when it pays’ and ‘Shearwater, finish when it pays’ are level',
    )
    expect(headline({ ...found, lead: 0.06 }, options)).toMatch(/\+0\.1 points a match$/)
  })
  test('says how sure that is', () => {
    expect(sureness(found, options)).toBe(
      `The better choice with a chance of 71${nbsp}% over what you believe; ahead of ‘Shearwater, finish when it pays’ in 55${nbsp}% of single matches.`,
    )
  })
  test('says on which side of what it turns, and what is believed', () => {
    expect(turning(report, hang, documents)).toEqual([
      `It turns to ‘Shearwater, finish when it pays’ if ‘Hang success’ is more than 78${nbsp}%.`,
      `You believe 50${nbsp}% to 95${nbsp}%, most likely 70${nbsp}%.`,
    ])
    expect(turning(report, { ...hang, likely: 0.9 }, documents)[0]).toBe(
      `It turns to ‘Kittiwake, finish when it pays’ if ‘Hang success’ is less than 78${nbsp}%.`,
    )
  })
  test('says so where nothing turns it', () => {
    const none = { ...report, breakEven: { input: 'Hang success', crossings: [] } }
    expect(turning(none, hang, documents)).toEqual([
      `It does not turn on ‘Hang success’ anywhere between 50${nbsp}% and 95${nbsp}%.`,
    ])
  })
  test('advises the fewest measurements that bring most of what they can: 12 bring 0.25 of 0.3', () => {
    expect(measureWords(report.belief!, [hang], documents)).toBe(
      'Measure ‘Hang success’ 12 times before deciding: worth 0.3 points a match.',
    )
  })
})

describe('an input in words', () => {
  test('says what its pointer points at', () => {
    expect(inputWords(hang, documents)).toMatchObject({ name: 'Hang success', about: 'Shearwater: success at Davit' })
    const pace: Input = {
      id: 'pace',
      paths: ['/options/1/robot/drive/pace'],
      as: 'factor',
      low: 0.9,
      likely: 1,
      high: 1.2,
    }
    const words = inputWords(pace, documents)
    expect(words.name).toBe('Kittiwake: pace of driving')
    expect(words.say(1.1)).toBe('× 1.1')
  })

  test('says speeds with the unit shown', () => {
    const speed: Input = {
      id: 'speed',
      paths: ['/options/0/robot/drive/topSpeed'],
      as: 'value',
      low: 3,
      likely: 3.5,
      high: 4,
    }
    expect(inputWords(speed, documents).say(3.048)).toBe(`3.05${nbsp}m/s`)
    chooseUnits('inchPound')
    onTestFinished(() => chooseUnits('metric'))
    // 1 ft = 0.3048 m exactly.
    expect(inputWords(speed, documents).say(3.048)).toBe(`10${nbsp}ft/s`)
    expect(inputWords({ ...speed, as: 'add' }, documents).say(0.3048)).toBe(`+1${nbsp}ft/s`)
    expect(inputWords({ ...speed, as: 'factor' }, documents).say(1.1)).toBe('× 1.1')
    expect(
      explainPlan(
        breakwater.game,
        options[0]!,
        new Planner(breakwater.game).report(options[0]!, { with: [] }),
        'here',
      ).inputs.map(({ value }) => value),
    ).toContain(`12.47${nbsp}ft/s`)
  })
})
