import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type * as z from 'zod'
import * as contracts from '../../../src/api/contracts/timings/index.ts'
import { ModelError } from '../../../src/model/errors.ts'
import { type CalculatorName, timing } from '../../../src/model/timing/index.ts'
import { examples } from './inputs.ts'
import { numbersOf, stretched } from './stretch.ts'

const contractOf: { [Name in CalculatorName]: { request: z.ZodType; answer: z.ZodType } } = {
  drive: { request: contracts.driveRequest, answer: contracts.driveAnswer },
  rollers: { request: contracts.rollersRequest, answer: contracts.rollersAnswer },
  pivot: { request: contracts.pivotRequest, answer: contracts.pivotAnswer },
  wheel: { request: contracts.wheelRequest, answer: contracts.wheelAnswer },
  shot: { request: contracts.shotRequest, answer: contracts.shotAnswer },
  cylinder: { request: contracts.cylinderRequest, answer: contracts.cylinderAnswer },
  air: { request: contracts.airRequest, answer: contracts.airAnswer },
}

/** Refused for being too quick to follow is an answer as well; it happens where a gram hangs on a large motor. */
function answered(name: CalculatorName, input: unknown): unknown {
  try {
    return timing(name, input as never)
  } catch (error) {
    if (error instanceof ModelError && error.code === 'overBudget') return null
    throw error
  }
}

describe('Whatever its contract allows is answered within its contract, in finite numbers:', () => {
  test.each(examples.map(([name, input], index) => ({ name, index, input })))(
    '$name, example $index',
    ({ name, input }) => {
      const { request, answer } = contractOf[name]
      expect(request.safeParse(input).error?.issues ?? []).toEqual([])
      const change = fc.tuple(
        fc.constantFrom(...numbersOf(input)),
        fc.constantFrom(0, 0.001, 0.03, 0.3, 0.8, 1.3, 3, 30, 1000, -1),
      )
      let allowed = 0
      fc.assert(
        fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
          const given = request.safeParse(stretched(input, changes))
          if (!given.success) return
          const told = answered(name, given.data)
          if (told === null) return
          allowed++
          const parsed = answer.safeParse(told)
          expect(parsed.error?.issues ?? [], JSON.stringify(given.data)).toEqual([])
        }),
        { numRuns: 100 },
      )
      expect(allowed).toBeGreaterThan(10)
    },
  )
})
