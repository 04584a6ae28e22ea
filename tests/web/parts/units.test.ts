import { describe, expect, test } from 'vitest'
import * as z from 'zod'
import { part } from '../../../src/api/contracts/timings/index.ts'
import { flowPoint, numbersOf, partKinds } from '../../../web/screens/parts/numbers.ts'
import { readNumber } from '../../../web/shell/fields/parse.ts'
import * as every from '../../../web/units/measures.ts'
import type { Measure } from '../../../web/units/quantities.ts'
import { writeQuantity } from '../../../web/units/write.ts'

const measures = { ...every }

interface Schema {
  type?: string
  minimum?: number
  exclusiveMinimum?: number
  maximum?: number
  properties?: { [key: string]: Schema }
  required?: string[]
  items?: Schema
  prefixItems?: Schema[]
  minItems?: number
  maxItems?: number
}

describe('The limits of the fields', () => {
  const schemaOf = (kind: string): Schema => {
    const option = part.options.find(({ shape }) => shape.kind.value === kind)!
    const { $ref, $defs } = z.toJSONSchema(option, { io: 'input' })
    return $defs![$ref!.split('/').at(-1)!] as Schema
  }

  test.each(partKinds.filter((kind) => kind !== 'compressor'))('of a %s are those of the contract', (kind) => {
    const { properties, required } = schemaOf(kind)
    const ours = Object.fromEntries(
      numbersOf[kind].map(({ key, min, above, max, optional }) => [key, { min, above, max, needed: !optional }]),
    )
    const theirs = Object.fromEntries(
      Object.entries(properties!)
        .filter(([, { type }]) => type === 'number')
        .map(([key, { minimum, exclusiveMinimum, maximum }]) => [
          key,
          { min: minimum, above: exclusiveMinimum, max: maximum, needed: required!.includes(key) },
        ]),
    )
    expect(ours).toEqual(theirs)
  })

  test('of a compressor’s points are those of the contract', () => {
    const { minItems, maxItems, items } = schemaOf('compressor').properties!['flow']!
    const [pressure, flow] = items!.prefixItems!
    expect(flowPoint).toMatchObject({
      least: minItems,
      most: maxItems,
      pressure: { min: pressure!.minimum, max: pressure!.maximum },
      flow: { min: flow!.minimum, max: flow!.maximum },
    })
  })
})

// NIST SP 811 (2008), appendix B.8, as it prints the factors; its digits are what is compared.
describe('What is typed becomes SI by the published factors', () => {
  test.each([
    ['torque', '1 lbf·ft', 1.355818],
    ['torque', '1 lbf in', 0.1129848],
    ['torque', '1 ozf·in', 0.007061552],
    ['pressure', '1 psi', 6894.757],
    ['pressure', '1 bar', 100_000],
    ['pressure', '1 bar abs', 100_000],
    ['rotation', '1 rpm', 0.1047198],
    ['volume', '1 in³', 0.00001638706],
    ['volume', '1 ft^3', 0.02831685],
    ['airFlow', '1 ft³/min', 0.0004719474],
    ['inertia', '1 lb·in²', 0.0002926397],
    ['inertia', '1 lb ft2', 0.04214011],
  ] as const)('%s: %s', (name, text, published) => {
    const read = measures[name].read(text, 'metric')!
    expect(Number(read.toPrecision(7))).toBe(Number(published.toPrecision(7)))
  })

  test('a gauge leaves the standard atmosphere out (101.325 kPa)', () => {
    expect(measures.pressure.read('0 psig', 'metric')).toBe(101_325)
    expect(measures.pressure.read('8 bar(g)', 'metric')).toBe(901_325)
    expect(measures.pressure.read('900', 'metric')).toBe(900_000)
    expect(measures.pressure.read('14.696 psia', 'metric')).toBeCloseTo(101_325, -1)
  })

  test('speeds of turning are read in rpm and rad/s: 13,000 rpm are 1361.4 rad/s', () => {
    expect(measures.rotation.read('13000', 'metric')).toBeCloseTo(1361.357, 3)
    expect(measures.rotation.read('600 rad/s', 'inchPound')).toBe(600)
  })

  test('lengths of parts are bare in millimetres or inches, and read in any other unit', () => {
    expect(measures.partLength.read('40', 'metric')).toBe(0.04)
    expect(measures.partLength.read('1 1/16', 'inchPound')).toBe(0.0269875)
    expect(measures.partLength.read('1 1/16 in', 'metric')).toBe(0.0269875)
    expect(measures.partLength.read('4 cm', 'inchPound')).toBe(0.04)
  })

  test.each(['', 'fast', '12 V 3', '3 lbf', '1..2 A', '1e999 rpm'])('‘%s’ is read as none of them', (text) => {
    const all = Object.values(measures).filter((each): each is Measure => typeof each === 'object')
    expect(all.length).toBeGreaterThan(9)
    for (const each of all) expect(readNumber(text, { quantity: each, max: 1e9 })).toHaveProperty('error')
  })

  test('a moment of inertia has five digits in all, an arm’s as well as a rotor’s', () => {
    expect(writeQuantity(3.2, measures.inertia, 'inchPound')).toBe('10935')
    expect(writeQuantity(0.0003, measures.inertia, 'inchPound')).toBe('1.0252')
    expect(writeQuantity(3.2, measures.inertia, 'metric')).toBe('32000')
  })

  test('what stands in a field is read back as it stood', () => {
    for (const kind of partKinds)
      for (const { quantity, max } of numbersOf[kind])
        for (const system of ['metric', 'inchPound'] as const) {
          if (typeof quantity !== 'object') continue
          const shown = writeQuantity(max / 7, quantity, system)
          expect(writeQuantity(quantity.read(shown, system)!, quantity, system)).toBe(shown)
        }
  })
})
