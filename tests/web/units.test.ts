import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readNumber, stepShown, writeNumber } from '../../web/shell/fields/parse.ts'
import { type Quantity, units } from '../../web/units/quantities.ts'
import { isBare, readQuantity } from '../../web/units/read.ts'
import { sayDistance, sayQuantity, writeQuantity } from '../../web/units/write.ts'

describe('a typed length', () => {
  // 1 in = 25.4 mm and 1 ft = 304.8 mm exactly (NIST SP 811, appendix B.8): the arithmetic is theirs.
  test.each([
    ['36 in', 0.9144],
    ['36in', 0.9144],
    ['36"', 0.9144],
    ['3 ft 2 in', 0.9652],
    ['3ft2in', 0.9652],
    ['3\' 2"', 0.9652],
    ["3' 2", 0.9652],
    ['3 ft 2', 0.9652],
    ['3’ 2 1/2”', 0.9779],
    ['1/2 in', 0.0127],
    ['7 3/8 Zoll', 0.187325],
    ['54 ft', 16.4592],
    ['1 yd 1 ft', 1.2192],
    ['0.9 m', 0.9],
    ['0,9 m', 0.9],
    ['90 cm', 0.9],
    ['1 m 5 cm', 1.05],
    ['905 mm', 0.905],
    ['\u22122 in', -0.0508],
    ['-3 ft 2 in', -0.9652],
  ])('%j is %d m', (text, metres) => {
    expect(readQuantity(text, 'length', 'metric')).toBe(metres)
    expect(readQuantity(text, 'length', 'inchPound')).toBe(metres)
  })

  test('without a unit is in the unit shown', () => {
    expect(readQuantity('36', 'length', 'metric')).toBe(36)
    expect(readQuantity('36', 'length', 'inchPound')).toBe(0.9144)
    expect(readQuantity('2 1/2', 'length', 'inchPound')).toBe(0.0635)
  })

  test.each([
    '',
    'in',
    '3 in 2 ft',
    '3 ft 2 ft',
    '3 lb',
    '3 m/s',
    '3 2',
    '3 in 2',
    '1e3 in',
    '3 parsec',
    '1/0 in',
    '3..2 m',
    '__proto__',
    '3 constructor',
  ])('%j is none', (text) => {
    expect(readQuantity(text, 'length', 'metric')).toBeNull()
  })

  test('that is none is answered with how to write one, and one beyond the limits in the unit shown', () => {
    const rules = { quantity: 'length', above: 0, max: 3 } as const
    expect(readNumber('3 lb', rules)).toEqual({
      error: '‘3 lb’ is not a length; write it like 0.9 m, 36 in or 3 ft 2 in.',
    })
    expect(readNumber('12 ft', rules, 'metric')).toEqual({ error: 'At most 3\u00a0m, not 12 ft.' })
    expect(readNumber('4 m', rules, 'inchPound')).toEqual({ error: 'At most 118.11\u00a0in, not 4 m.' })
    expect(readNumber('', rules)).toEqual({ error: 'Please give a number.' })
  })
})

test('masses and speeds, with 1 lb = 0.45359237 kg and 1 mi = 1609.344 m', () => {
  expect(readQuantity('12 lb', 'mass', 'metric')).toBe(5.44310844)
  expect(readQuantity('12 lb 8 oz', 'mass', 'metric')).toBe(5.669904625)
  expect(readQuantity('120', 'mass', 'inchPound')).toBe(54.4310844)
  expect(readQuantity('10 ft/s', 'speed', 'metric')).toBe(3.048)
  expect(readQuantity('1 mph', 'speed', 'metric')).toBe(0.44704)
  expect(readQuantity('36 km/h', 'speed', 'metric')).toBe(10)
  expect(readQuantity('10 ft/s²', 'acceleration', 'metric')).toBe(3.048)
  expect(readQuantity('10 ft/s2', 'acceleration', 'metric')).toBe(3.048)
})

describe('a kept value', () => {
  test('is shown with the digits that somebody could measure', () => {
    expect(writeQuantity(0.9144, 'length', 'inchPound')).toBe('36')
    expect(writeQuantity(0.85, 'length', 'inchPound')).toBe('33.46')
    expect(writeQuantity(0.849884, 'length', 'metric')).toBe('0.8499')
    expect(writeNumber(3.5, { quantity: 'speed' }, 'inchPound')).toBe('11.48')
    expect(sayQuantity(-0.5, 'length', 'metric')).toBe('\u22120.5\u00a0m')
    expect(sayDistance(12.3, 'inchPound')).toBe('40\u00a0ft 4\u00a0in')
    expect(sayDistance(0.1, 'inchPound')).toBe('4\u00a0in')
    expect(sayDistance(3.6575, 'inchPound')).toBe('12\u00a0ft 0\u00a0in')
    expect(sayDistance(12.345, 'metric')).toBe('12.35\u00a0m')
  })

  test('that is shown, read and shown again stands there alike, and is off by no more than a shown digit', () => {
    const quantities = Object.keys(units.metric) as Quantity[]
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.constantFrom('metric', 'inchPound' as const),
        fc.double({ min: -200, max: 200, noNaN: true }),
        (quantity, system, value) => {
          const shown = writeQuantity(value, quantity, system)
          const read = readQuantity(shown, quantity, system)!
          const { factor, digits } = units[system][quantity]
          // Half a unit of the last digit shown, and what floating point adds to a number of that size.
          expect(Math.abs(read - value)).toBeLessThanOrEqual((factor * 10 ** -digits) / 2 + 1e-9)
          expect(writeQuantity(read, quantity, system)).toBe(shown)
        },
      ),
    )
  })
})

test('an arrow key adds a round number in the unit shown', () => {
  expect(stepShown(0.05, { quantity: 'length' }, 'metric')).toBe(0.05)
  expect(stepShown(0.05, { quantity: 'length' }, 'inchPound')).toBe(2)
  expect(stepShown(0.01, { quantity: 'length' }, 'inchPound')).toBe(0.5)
  expect(stepShown(5, {}, 'inchPound')).toBe(5)
})

test('a bare number is told from one with a unit', () => {
  expect(['36', ' -3,5 ', '2 1/2'].filter(isBare)).toHaveLength(3)
  expect(['36 in', 'm', ''].filter(isBare)).toEqual([])
})
