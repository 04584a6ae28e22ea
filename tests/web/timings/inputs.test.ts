import { describe, expect, test } from 'vitest'
import * as z from 'zod'
import { breakwater } from '../../../seed/index.ts'
import { parts, slimCylinder, smallMotor } from '../../../seed/parts.ts'
import { mechanism as contract } from '../../../src/api/contracts/mechanism.ts'
import {
  cylinderRequest,
  driveRequest,
  pivotRequest,
  rollersRequest,
  shotRequest,
  wheelRequest,
} from '../../../src/api/contracts/timings/index.ts'
import { mechanismAnswer, type Part } from '../../../src/model/timing/index.ts'
import { type Around, firstMechanism } from '../../../web/screens/timings/first.ts'
import { type Field, formOf, kindOf, type MechanismKind, mechanismKinds } from '../../../web/screens/timings/inputs.ts'
import { timingInputs as german } from '../../../web/words/de/timingInputs.ts'
import { timingInputs as english } from '../../../web/words/en/timingInputs.ts'

const { game, designs } = breakwater
const [{ robot }] = designs as [(typeof designs)[number]]
const legs = [
  { length: 3, weight: 1 },
  { length: 7, weight: 1 },
]
const around = (shelf: readonly Part[]): Around => ({ game, robot, shelf, legs, today: '2026-11-27' })
const weak = [smallMotor, slimCylinder]

describe('a new mechanism', () => {
  test.each(mechanismKinds)('of the kind %s is accepted by the contract and can do it, with any shelf', (kind) => {
    for (const shelf of [parts, weak, []]) {
      const made = firstMechanism(kind, { id: 'new', name: 'New' }, around(shelf))
      expect(contract.parse(made)).toEqual(made)
      expect(kindOf(made)).toBe(kind)
      const answer = mechanismAnswer(made)
      expect(answer.possible ? [] : answer).toEqual([])
    }
  })

  test('of a drive fits the game’s legs, and takes mass and braking from the robot', () => {
    const made = firstMechanism('drive', { id: 'new', name: 'New' }, around(parts))
    expect(made.input).toMatchObject({
      mass: robot.budget!.mass,
      brakingLimit: robot.drive.deceleration,
      legs,
      distance: 5,
    })
  })
})

interface Schema {
  type?: string
  minimum?: number
  maximum?: number
  exclusiveMinimum?: number
  properties?: { [key: string]: Schema }
  prefixItems?: Schema[]
  anyOf?: Schema[]
  oneOf?: Schema[]
  enum?: string[]
  const?: string
}

/** The contract as a JSON Schema, with what is named once put where it belongs. */
function schemaOf(request: z.ZodType): Schema {
  const whole = z.toJSONSchema(request) as { $defs?: { [name: string]: unknown } }
  const put = (node: unknown): unknown => {
    if (typeof node !== 'object' || node === null) return node
    if (Array.isArray(node)) return node.map(put)
    const { $ref, $defs: _, ...rest } = node as { $ref?: string; $defs?: unknown }
    const named = $ref === undefined ? {} : (put(whole.$defs?.[$ref.split('/').at(-1)!]) as object)
    return { ...named, ...Object.fromEntries(Object.entries(rest).map(([key, each]) => [key, put(each)])) }
  }
  return put(whole) as Schema
}
const pivots = schemaOf(pivotRequest).oneOf as [Schema, Schema]
const requests: { readonly [Kind in MechanismKind]: Schema } = {
  drive: schemaOf(driveRequest),
  rollers: schemaOf(rollersRequest),
  motorArm: pivots[0],
  cylinderArm: pivots[1],
  spinUp: schemaOf(wheelRequest),
  recovery: schemaOf(wheelRequest),
  shot: schemaOf(shotRequest),
  cylinder: schemaOf(cylinderRequest),
}

/** Every form that a value may have. */
const forms = (schema: Schema): Schema[] => [
  schema,
  ...[...(schema.anyOf ?? []), ...(schema.oneOf ?? [])].flatMap(forms),
]

/** What the contract says of a dotted path. */
function at(schema: Schema, key: string): Schema[] {
  return key.split('.').reduce<Schema[]>(
    (found, part) =>
      found.flatMap(({ properties, prefixItems }) => {
        const next = properties?.[part] ?? prefixItems?.[Number(part)]
        return next ? forms(next) : []
      }),
    forms(schema),
  )
}

const fieldsOf = (kind: MechanismKind): Field[] => formOf[kind].flatMap(({ fields }) => fields)

describe.each(mechanismKinds)('the form of %s', (kind) => {
  test('has the limits of the contract, and its spreads where it takes them', () => {
    let numbers = 0
    for (const field of fieldsOf(kind)) {
      if (field.kind !== 'number') continue
      const all = at(requests[kind], field.key)
      const [number] = all.filter(({ type }) => type === 'number' || type === 'integer')
      expect({ key: field.key, ...number }).toMatchObject({ key: field.key, minimum: field.min, maximum: field.max })
      expect([field.key, number?.type === 'integer']).toEqual([field.key, field.whole === true])
      const spreads = all.some(({ properties }) => properties?.['likely'])
      expect([field.key, spreads]).toEqual([field.key, field.uncertain === true])
      const mayMiss = all.some(({ type }) => type === 'null')
      expect([field.key, mayMiss]).toEqual([field.key, field.fresh !== undefined])
      numbers++
    }
    expect(numbers).toBeGreaterThan(5)
  })

  test('asks for everything that the calculator is given', () => {
    const asked = new Set(fieldsOf(kind).map((field) => (field.kind === 'legs' ? 'legs' : field.key.split('.')[0]!)))
    expect([...asked].sort()).toEqual(
      Object.keys(requests[kind].properties!)
        .filter((key) => key !== 'by')
        .sort(),
    )
  })

  test('has a label for each field and each choice in both languages', () => {
    const calculator = firstMechanism(kind, { id: 'new', name: 'New' }, around(parts)).calculator
    for (const { labels, choices } of [english, german])
      for (const field of fieldsOf(kind)) {
        const key = field.kind === 'legs' ? 'legs' : field.key
        expect([key, labels[calculator]?.[key] ?? labels['all']![key]]).toEqual([key, expect.any(String)])
        if (field.kind === 'choice') {
          expect(at(requests[kind], field.key).flatMap((form) => form.enum ?? [])).toEqual(field.of)
          for (const choice of field.of) expect([choice, choices[choice]]).toEqual([choice, expect.any(String)])
        }
      }
  })
})

test('labels and helps are the same ones in both languages, and each help belongs to a label', () => {
  const keys = (tree: typeof english.labels) =>
    Object.entries(tree).flatMap(([calculator, own]) => Object.keys(own).map((key) => `${calculator} ${key}`))
  expect(keys(german.labels)).toEqual(keys(english.labels))
  expect(keys(german.helps)).toEqual(keys(english.helps))
  expect(keys(english.helps).filter((key) => !keys(english.labels).includes(key))).toEqual([])
})
