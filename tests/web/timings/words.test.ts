import { afterAll, describe, expect, test } from 'vitest'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import { mechanismAnswer, type Remark } from '../../../src/model/timing/index.ts'
import { sayEnergy } from '../../../web/charts/timing/say.ts'
import { atmosphereWords, gaugeWords } from '../../../web/screens/parts/gauge.ts'
import { explainQuantity, explainTiming } from '../../../web/screens/timings/explainTiming.ts'
import { kindOf, numbersIn } from '../../../web/screens/timings/inputs.ts'
import { fourDigits } from '../../../web/screens/timings/problems.ts'
import { quantitiesOf, quantityWords } from '../../../web/screens/timings/quantities.ts'
import { combined, quantitySum } from '../../../web/screens/timings/quantitySum.ts'
import { remarkWords } from '../../../web/screens/timings/remarks.ts'
import { chooseUnits } from '../../../web/units/system.ts'
import { allWords, chooseLanguage } from '../../../web/words/catalogue.ts'
import { timingRemarks as german } from '../../../web/words/de/timingRemarks.ts'
import { timingRemarks as english } from '../../../web/words/en/timingRemarks.ts'
import { sources } from '../../house/sources.ts'
import { examples } from '../../model/timing/inputs.ts'

afterAll(() => chooseLanguage(['en']))

/** Every remark in the calculators' sources: its code, and the names in braces of the sentence that stands nearest. */
const remarks = sources('src/model/timing').flatMap(({ text }) =>
  [...text.matchAll(/\bremark\(\s*'(\w+)',\s*(?:'([^']*)'|(text|stays))/g)].map((match) => {
    const named = [...text.slice(0, match.index).matchAll(/\b(?:text|stays)\s*=\s*'([^']*)'/g)].at(-1)?.[1]
    return { code: match[1]!, sentence: match[2] ?? named }
  }),
)
const later = sources('src/model/timing').flatMap(({ text }) =>
  [...text.matchAll(/\bstays\s*=\s*\n?\s*'([^']*)'/g)].map((match) => match[1]!),
)
const braces = (sentence: string): string[] => [...sentence.matchAll(/\{(\w+)\}/g)].map((match) => match[1]!).sort()

test('every remark of the calculators has its sentence in both languages, with the same numbers', () => {
  expect(remarks.length).toBeGreaterThan(50)
  const known: { [name: string]: string } = english
  for (const { code, sentence } of remarks) {
    const own = sentence ?? later[0] ?? ''
    const names = [code, `${code}At`, `${code}Flight`, `${code}Working`].filter((name) => name in known)
    expect([code, names.length > 0]).toEqual([code, true])
    expect(names.map((name) => braces(known[name]!))).toContainEqual(braces(own))
  }
  expect(Object.keys(german)).toEqual(Object.keys(english))
  for (const [name, sentence] of Object.entries(german))
    expect([name, braces(sentence)]).toEqual([name, braces(known[name]!)])
})

test('a sentence writes its numbers in the reader’s units, and no name in braces is left', async () => {
  const stalls: Remark = { code: 'stalls', message: '', values: { angle: 0.5, needed: 20, torque: 12.345 } }
  expect(remarkWords(stalls).replaceAll('\u00a0', ' ')).toBe(
    'It stalls at 28.6 °: gravity and friction need 20 N·m there, the motors give 12.3 N·m.',
  )
  await chooseLanguage(['de'])
  await allWords()
  expect(remarkWords(stalls).replaceAll('\u00a0', ' ')).toBe(
    'Er bleibt bei 28,6 ° stehen: Gewicht und Reibung brauchen dort 20 N·m, die Motoren geben 12,3 N·m.',
  )
  for (const { code, sentence } of remarks) {
    const values = Object.fromEntries(braces(sentence ?? '').map((name) => [name, 1.5]))
    expect(remarkWords({ code, message: 'no words', values })).not.toMatch(/\{|undefined|NaN|no words/)
  }
  await chooseLanguage(['en'])
})

test('a number beside its sensitivity is rounded as it is shown: a room of 293.15 K is 20 °C and 68 °F', () => {
  const of = (kind: 'cylinder', key: string) => numbersIn(kind).find((number) => number.key === key)!
  const written = (value: number, key: string) => fourDigits(value, of('cylinder', key)).replaceAll('\u00a0', ' ')
  expect([written(293.15, 'temperature'), written(501_325, 'pressure')]).toEqual(['20 °C', '501.3 kPa(a)'])
  chooseUnits('inchPound')
  expect([written(293.15, 'temperature'), written(501_325, 'pressure')]).toEqual(['68 °F', '72.71 psia'])
  // One unit alone, without the letter for absolute.
  expect(gaugeWords(501_325).replaceAll('\u00a0', ' ')).toBe('A gauge shows 58 psi.')
  expect(atmosphereWords()).toBe('14.7\u00a0psi')
  // 405 J × 0.737562 (NIST SP 811, appendix B.8: 1 ft·lbf = 1.355818 J); the drawing said joules in both.
  expect(sayEnergy(405)).toBe('299\u00a0ft·lbf')
  chooseUnits('metric')
  expect(sayEnergy(405)).toBe('405\u00a0J')
  expect(gaugeWords(501_325).replaceAll('\u00a0', ' ')).toBe('A gauge shows 400 kPa.')
})

test('a code that the catalogue does not know comes as it is', () => {
  expect(remarkWords({ code: 'toString', message: 'As it came', values: {} })).toBe('As it came')
})

test('how a time came about: the drive’s two stretches make it, and every number that goes in is named', async () => {
  await chooseLanguage(['en'])
  await allWords()
  for (const [calculator, input] of examples) {
    if (calculator === 'air') continue
    const mechanism = { id: 'one', name: 'One', calculator, input } as Mechanism
    const answer = mechanismAnswer(mechanism)
    if (!answer.possible) throw new Error('the examples can do it')
    const { formula, result, inputs, parts, total, source } = explainTiming(mechanism, answer, {
      source: 'One robot, revision 3.',
      stopwatch: '/designs/one/stopwatch',
    })
    expect([formula.length > 80, result]).toEqual([true, `${answer.seconds.toFixed(2)}\u00a0s at the likely numbers`])
    expect(source).toMatch(/One robot, revision 3\.$/)
    expect(inputs.length).toBeGreaterThanOrEqual(numbersIn(kindOf(mechanism)).length - 3)
    expect(JSON.stringify(inputs)).not.toMatch(/undefined|NaN|object/)
    expect([parts.length, total?.label]).toEqual(calculator === 'drive' ? [2, 'Time'] : [0, undefined])
  }
})

describe('quantities', () => {
  const mechanisms = examples.filter(([name]) => name !== 'air')
  test.each(mechanisms)('of %s are all told, in words', (calculator, input) => {
    const answer = mechanismAnswer({ id: 'a', name: 'A', calculator, input } as never)
    if (!answer.possible) throw new Error('impossible')
    const told = Object.keys(answer.quantities).filter((key) => key !== 'trapezoid')
    const known = quantitiesOf[calculator as 'drive'].map(([key]) => key)
    expect([...known].sort()).toEqual(told.sort())
    const lines = quantityWords(calculator as 'drive', answer.quantities)
    expect(lines.length).toBeGreaterThan(5)
    for (const { what, much } of lines) expect(`${what}: ${much}`).not.toMatch(/undefined|NaN/)
  })

  test('each says what it is; sums and products make what is shown, what is read off a course has none', () => {
    const summed = new Set<string>()
    const all = new Set<string>()
    for (const [calculator, input] of mechanisms) {
      const mechanism = { id: 'a', name: 'A', calculator, input } as Mechanism
      const answer = mechanismAnswer(mechanism)
      if (!answer.possible) throw new Error('impossible')
      for (const { key, what, much } of quantityWords(mechanism.calculator, answer.quantities)) {
        const told = explainQuantity(mechanism, answer, { key, what, much, source: 'One robot, revision 3.' })
        expect([key, told.formula, told.source]).toEqual([
          key,
          expect.not.stringMatching(/undefined|^ /),
          expect.stringMatching(/One robot, revision 3\.$/),
        ])
        all.add(`${calculator}.${key}`)
        const sum = quantitySum(mechanism, answer.quantities, { key, seconds: answer.seconds })
        if (sum === null) continue
        summed.add(`${calculator}.${key}`)
        expect(told.parts.length).toBe(sum.terms.length)
        expect(JSON.stringify(told)).not.toMatch(/undefined|NaN/)
        if (sum.total.what === what) {
          const value = (answer.quantities as unknown as { [name: string]: number })[key]!
          expect(Math.abs(combined(sum.terms) - value)).toBeLessThanOrEqual(1e-6 * Math.abs(value))
        }
      }
    }
    expect([...summed].sort()).toEqual([
      'cylinder.endEnergy',
      'cylinder.force',
      'drive.brakingSeconds',
      'drive.runningSeconds',
      'drive.sourceVoltage',
      'drive.tractionForce',
      'pivot.endEnergy',
      'pivot.gravityTorque',
      'pivot.sourceVoltage',
      'rollers.ratio',
      'rollers.sourceVoltage',
      'shot.apex',
      'shot.wheelSpeed',
      'shot.wheelSurfaceSpeed',
      'wheel.sourceVoltage',
      'wheel.speedAfterShot',
      'wheel.speedLost',
      'wheel.surfaceSpeed',
    ])
    expect(all.size).toBeGreaterThan(55)
  })
})
