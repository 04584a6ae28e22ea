import { describe, expect, test } from 'vitest'
import { readNumber, readTimes, writeNumber } from '../../web/shell/fields/parse.ts'

describe('a typed number', () => {
  test('may have a decimal comma, a unit and a true minus', () => {
    expect(readNumber('1,5 s')).toEqual({ value: 1.5 })
    expect(readNumber(' 4.2 m/s ')).toEqual({ value: 4.2 })
    expect(readNumber('\u22120.5')).toEqual({ value: -0.5 })
    expect(readNumber('× 1.2')).toEqual({ value: 1.2 })
  })

  test('in per cent is kept as a probability and shown again as typed', () => {
    expect(readNumber('78 %', { percent: true, min: 0, max: 1 })).toEqual({ value: 0.78 })
    expect(writeNumber(0.78, { percent: true })).toBe('78')
    expect(writeNumber(0.29, { percent: true })).toBe('29')
  })

  test.each([
    ['', 'Please give a number.'],
    ['fast', '‘fast’ is not a number; write it like 1.5.'],
    ['1e9', '‘1e9’ is not a number; write it like 1.5.'],
    ['NaN', '‘NaN’ is not a number; write it like 1.5.'],
    ['Infinity', '‘Infinity’ is not a number; write it like 1.5.'],
    ['-1', 'At least 0, not -1.'],
    ['700', 'At most 600, not 700.'],
  ])('%j is answered: %s', (text, error) => {
    expect(readNumber(text, { min: 0, max: 600 })).toEqual({ error })
  })

  test('limits are said in the unit of the field', () => {
    expect(readNumber('120', { percent: true, min: 0, max: 1 })).toEqual({ error: 'At most 100 %, not 120 %.' })
    expect(readNumber('0', { above: 0 })).toEqual({ error: 'More than 0, not 0.' })
    expect(readNumber('1.5', { whole: true })).toEqual({ error: 'A whole number is needed, not 1.5.' })
  })
})

describe('measured times', () => {
  test('are read with spaces, line ends, semicolons or commas between them', () => {
    expect(readTimes('7.1 8,2\n9; 7.7, 8')).toEqual({ values: [7.1, 8.2, 9, 7.7, 8] })
  })

  test('fewer than three, or a word among them, is answered', () => {
    expect(readTimes('7.1 8.2')).toEqual({ error: 'At least 3 measured times are needed, got 2.' })
    expect(readTimes('7 8 nine')).toEqual({ error: '‘nine’ is not a number; write it like 1.5.' })
  })
})
