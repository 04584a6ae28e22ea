import { describe, expect, test } from 'vitest'
import { comparisonResult } from '../../../seed/comparisonResult.ts'
import { decisionWith } from '../../../seed/decision.ts'
import { decisionRecord } from '../../../src/api/contracts/index.ts'
import { agreeing } from '../../../web/screens/decisions/agreement.ts'
import { missingFrom } from '../../../web/screens/decisions/missing.ts'

const decision = decisionWith(comparisonResult)

describe('agreeing', () => {
  const agreed = [{ who: 'Mentor for safety', on: '2027-01-17' }]

  test('adds the name and this minute, in universal time, behind those who agreed before', () => {
    expect(agreeing(agreed, '  Tilly ', '2027-01-18T09:41:27.123Z')).toEqual({
      agreed: [...agreed, { who: 'Tilly', on: '2027-01-18T09:41Z' }],
    })
  })
  test('asks for a name, and lets nobody agree twice, however it is written', () => {
    expect(agreeing(agreed, ' ', '2027-01-18T09:41:27Z')).toEqual({ error: 'Please say who agrees.' })
    expect(agreeing(agreed, 'mentor for Safety', '2027-01-18T09:41:27Z')).toEqual({
      error: '‘mentor for Safety’ has agreed already.',
    })
  })
})

describe('what a record lacks', () => {
  test('is nothing on the season’s record', () => {
    expect(missingFrom(decision)).toEqual([])
  })
  test('is named part by part', () => {
    const bare = { ...decision, assumptions: [], wouldChange: [], measureNext: [], objections: [], agreed: [] }
    expect(missingFrom({ ...bare, checks: [], checkAtEvent: ' ' })).toHaveLength(6)
    expect(missingFrom({ ...decision, assumptions: [{ text: 'It drives.', source: ' ' }] })).toEqual([
      'One assumption has no source.',
    ])
    expect(
      missingFrom({ ...decision, objections: decision.objections.map((one) => ({ ...one, answer: '' })) }),
    ).toEqual(['3 objections are not answered.'])
  })
})

describe('the contract of a record', () => {
  const messages = (agreed: unknown) =>
    decisionRecord.safeParse({ ...decision, agreed }).error?.issues.map(({ message }) => message)

  test('takes a day and a day with its time, and no other words for when', () => {
    expect(messages([{ who: 'Tilly', on: '2027-01-18' }])).toBeUndefined()
    expect(messages([{ who: 'Tilly', on: '2027-01-18T09:41Z' }])).toBeUndefined()
    expect(messages([{ who: 'Tilly', on: '2027-01-18T09:41:27.5+01:00' }])).toBeUndefined()
    expect(messages([{ who: 'Tilly', on: 'on Monday' }])).toEqual([
      'a moment is written 2031-02-28 or 2031-02-28T14:05Z, got "on Monday"',
    ])
  })
  test('still takes records from before objections had a name and checks were lines', () => {
    const { checks: _, ...older } = decision
    const objections = decision.objections.map(({ text, answer }) => ({ text, answer }))
    expect(decisionRecord.safeParse({ ...older, objections }).success).toBe(true)
    const { air, tradeOff, ...snapshot } = decision.snapshot
    expect([air!.length, tradeOff]).toEqual([1, 'The hook or the practice'])
    expect(decisionRecord.safeParse({ ...decision, snapshot }).success).toBe(true)
  })
})
