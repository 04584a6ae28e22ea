import { describe, expect, test } from 'vitest'
import { sweep } from '../../../src/model/timing/index.ts'
import { logTicks, outsideOf, runsOfValues, upTo } from '../../../web/charts/timing/gearings.ts'
import { firstMotors, firstTexts, readSearch } from '../../../web/screens/timings/search/first.ts'
import { mostPoints, placeOf, rowsOf } from '../../../web/screens/timings/search/rows.ts'
import { driveInput, motorPivotInput, wheelInput } from '../../model/timing/inputs.ts'

describe('what is tried at first', () => {
  test('is a third to three times the reduction, one motor less and more, and the mechanism’s own limits', () => {
    const arm = { calculator: 'pivot', input: motorPivotInput } as const
    expect(firstTexts(arm)).toEqual({
      low: '27',
      high: '240',
      motorCurrent: '40',
      sourceCurrent: '',
      sourceVoltage: '7',
    })
    expect(firstMotors(arm)).toEqual([1, 2])
  })

  test('keeps a drive’s motors even, and asks for no more than sixteen', () => {
    expect(firstMotors({ calculator: 'drive', input: driveInput })).toEqual([2, 4, 6])
    expect(firstMotors({ calculator: 'wheel', input: { ...wheelInput, motors: 16 } })).toEqual([15, 16])
  })

  test('what is typed is refused with its sentence, an empty limit is none', () => {
    const texts = { low: '20', high: '10', motorCurrent: '', sourceCurrent: '-5', sourceVoltage: '6,5' }
    const read = readSearch(texts)
    expect('errors' in read && Object.keys(read.errors).sort()).toEqual(['high', 'sourceCurrent'])
    expect('errors' in read && read.errors.high).toBe('The greatest reduction must be above the least, 20; it is 10.')
    const right = readSearch({ ...texts, high: '40', sourceCurrent: '120 A' })
    expect(right).toEqual({ reductions: { low: 20, high: 40 }, limits: { sourceCurrent: 120, sourceVoltage: 6.5 } })
  })
})

describe('rows of a sweep', () => {
  const result = sweep({
    calculator: 'pivot',
    input: motorPivotInput,
    reductions: { low: 20, high: 200, count: 11 },
    motors: [2, 1],
    limits: { sourceCurrent: 85 },
  })

  test('hold each number of motors, and find the place closest in ratio', () => {
    const rows = rowsOf(result, new Map())
    expect(rows.map(({ motors, points }) => [motors, points.length])).toEqual([
      [2, 11],
      [1, 11],
    ])
    expect(placeOf(rows, { reduction: 61, motors: 1 })).toEqual({ motors: 1, place: 5 })
    expect(placeOf(rows, { reduction: 1e4, motors: 7 })).toEqual({ motors: 2, place: 10 })
  })

  test('know the most points within the limits, with fewer motors where they are equal, and how flat that is', () => {
    const planned = new Map([
      [2, new Map([4, 5, 6, 7].map((place) => [place, [70, 70.05, 70.1, 69.5][place - 4]!] as const))],
      [1, new Map([5, 6, 7, 8].map((place) => [place, [69, 70.1, 70.02, 69.9][place - 5]!] as const))],
    ])
    const most = mostPoints(rowsOf(result, planned))!
    const row = result.points.filter(({ motors }) => motors === 1)
    expect(most).toEqual({ at: row[6], points: 70.1, low: row[6]!.reduction, high: row[7]!.reduction })
    expect(mostPoints(rowsOf(result, new Map()))).toBeNull()
  })

  test('a gearing outside the limits has not the most points', () => {
    const { points } = sweep({
      calculator: 'pivot',
      input: motorPivotInput,
      reductions: { low: 20, high: 200, count: 11 },
      motors: [2],
      limits: { sourceCurrent: 60 },
    })
    const outside = points.findIndex(({ seconds, within }) => seconds !== null && !within)
    const inside = points.findIndex(({ within }) => within)
    expect([outside, inside].every((place) => place >= 0)).toBe(true)
    const planned = new Map([
      [
        2,
        new Map([
          [outside, 90],
          [inside, 50],
        ]),
      ],
    ])
    expect(mostPoints(rowsOf({ points, best: null, flat: null }, planned))!.at).toEqual(points[inside])
  })
})

describe('the picture of a sweep', () => {
  test('has few round numbers on its logarithmic axis', () => {
    expect(logTicks(27, 240, 5)).toEqual([50, 100, 200])
    expect(logTicks(27, 240, 6)).toEqual([30, 50, 70, 100, 150, 200])
    expect(logTicks(0.5, 5, 3)).toEqual([1, 3])
  })

  test('hatches what is outside up to the middle in ratio, as one stretch where it hangs together', () => {
    const row = [1, 4, 16, 64].map((reduction, index) => ({ reduction, within: index === 2 }))
    expect(outsideOf(row)).toEqual([
      [1, 8],
      [32, 64],
    ])
    expect(outsideOf(row.map((each) => ({ ...each, within: true })))).toEqual([])
  })

  test('draws no line across what can not be done, and leaves no room for times that run away', () => {
    const row = [1, null, 3, 4].map((seconds, index) => ({ reduction: index + 1, within: true, seconds }))
    expect(runsOfValues(row, 'seconds')).toEqual([
      [[1, 1]],
      [
        [3, 3],
        [4, 4],
      ],
    ])
    expect(upTo([0.5, 0.6, 40], 'seconds')).toEqual([0, 1.5 * 1.05])
    expect(upTo([80, 82], 'points')).toEqual([79.5, 82.5])
  })
})
