import { describe, expect, it } from 'vitest'
import { applyInput, type Documents } from '../../../src/model/compare/index.ts'
import type { Input } from '../../../src/model/compare/types.ts'
import type { Duration } from '../../../src/model/documents/types.ts'
import { type AnyDuration, distributionOf } from '../../../src/model/duration/index.ts'
import { ModelError } from '../../../src/model/errors.ts'
import { documentsOf } from './reference.ts'

const input = (as: Input['as'], ...paths: string[]): Input => ({ id: 'x', paths, as, low: 0, likely: 0.5, high: 1 })

function refusal(documents: Documents, asked: Input, value: number): ModelError {
  try {
    applyInput(documents, asked, value)
  } catch (error) {
    if (error instanceof ModelError) return error
    throw error
  }
  throw new Error('nothing was refused')
}

/** The winch of the first option's davit takes this long. */
function withWinch(duration: Duration): Documents {
  const documents = documentsOf('cormorant-best')
  const trip = documents.options[0]!.robot.finish['davit'] as { stages: { duration: Duration }[] }
  trip.stages[2]!.duration = duration
  return documents
}
const winch = '/options/0/robot/finish/davit/stages/2/duration'
function winchAfter(documents: Documents, asked: Input, value: number): AnyDuration {
  const changed = applyInput(documents, asked, value)
  return (changed.options[0]!.robot.finish['davit'] as { stages: { duration: AnyDuration }[] }).stages[2]!.duration
}

describe('where an input is applied', () => {
  const success = '/options/1/robot/finish/davit/success'

  it('replaces, multiplies or adds to a number, at all its paths at once', () => {
    const documents = documentsOf('cormorant-best', 'gannet-best')
    const entry = (changed: Documents) => changed.options[0]!.robot.score['gantry']!.map(({ success }) => success)
    const paths = ['/options/0/robot/score/gantry/0/success', '/options/0/robot/score/gantry/1/success']
    const [near, far] = entry(documents) as [number, number]
    expect(entry(applyInput(documents, input('value', ...paths), 0.4))).toEqual([0.4, 0.4])
    expect(entry(applyInput(documents, input('factor', ...paths), 0.5))).toEqual([near * 0.5, far * 0.5])
    expect(entry(applyInput(documents, input('add', ...paths), -0.1))).toEqual([near - 0.1, far - 0.1])
    expect(applyInput(documents, input('value', '/game/clock/teleop'), 120).game.clock.teleop).toBe(120)
  })

  it('copies along the path alone: every other object stays the same object, and nothing is written into', () => {
    const documents = documentsOf('cormorant-best', 'gannet-best')
    const before = structuredClone(documents)
    const changed = applyInput(documents, input('value', success), 0.25)
    expect(documents).toEqual(before)
    expect(changed.game).toBe(documents.game)
    expect(changed.options[0]).toBe(documents.options[0])
    const [robot, old] = [changed.options[1]!.robot, documents.options[1]!.robot]
    expect(robot.finish['davit']!.success).toBe(0.25)
    expect(robot.drive).toBe(old.drive)
    expect(robot.score).toBe(old.score)
    expect(robot.finish['drydock']).toBe(old.finish['drydock'])
    expect('stages' in robot.finish['davit']! && robot.finish['davit'].stages).toBe(
      'stages' in old.finish['davit']! && old.finish['davit'].stages,
    )
  })

  it('finds keys that hold / and ~ by ~1 and ~0 (RFC 6901, section 3)', () => {
    const documents = documentsOf('cormorant-best')
    documents.options[0]!.holdSeconds = { 'a/b': 1, 'c~d': 2, '~1': 3 }
    const held = (path: string) => applyInput(documents, input('value', path), 9).options[0]!.holdSeconds
    expect(held('/options/0/holdSeconds/a~1b')).toEqual({ 'a/b': 9, 'c~d': 2, '~1': 3 })
    expect(held('/options/0/holdSeconds/c~0d')).toEqual({ 'a/b': 1, 'c~d': 9, '~1': 3 })
    expect(held('/options/0/holdSeconds/~01')).toEqual({ 'a/b': 1, 'c~d': 2, '~1': 9 })
  })

  it.each([
    ['options/0/robot/form/spread', 'must begin'],
    ['', 'must begin'],
    ['/options/0/robot/form~2', "'~'"],
    ['/options/7/robot/form/spread', "no '7'"],
    ['/options/00/robot/form/spread', "no '00'"],
    ['/options/-/robot', "no '-'"],
    ['/options/0/robot/wings', "no 'wings'"],
    ['/options/0/constructor/name', "no 'constructor'"],
    ['/options/length', "no 'length'"],
    ['/options/0/robot/form/spread/deeper', "no 'deeper'"],
    ['/inputs/0', '/game'],
    ['/options/0/robot/name', 'neither a number'],
    ['/options/0/robot', 'neither a number'],
    ['/game/format', 'can not be an input'],
    [winch, "'factor' or 'add'"],
  ])('refuses the path %s, and says which of the input’s paths it is', (path, words) => {
    const error = refusal(documentsOf('cormorant-best'), input('value', '/options/0/robot/form/spread', path), 1)
    expect(error.code).toBe('invalid')
    expect(error.path).toEqual(['paths', 1])
    expect(error.message).toContain(words)
    expect(error.message).toContain("'x'")
  })

  it.each([
    ['/options/0/robot/finish/davit/success', 1.2, 'between 0 and 1'],
    ['/options/0/robot/form/spread', 0.9, 'at least 1'],
    ['/options/0/robot/drive/topSpeed', 0, 'above 0'],
    ['/options/0/robot/carries/cask', 1.5, 'whole number'],
    ['/game/clock/teleop', 100.05, 'multiple of 0.1'],
    ['/options/0/robot/drive/pace/low', 0.9, 'pace'],
    ['/options/0/robot/drive/pace/low', 9, 'low ≤ likely ≤ high'],
    [`${winch}/median`, -1, 'at least 0 s'],
    [`${winch}/spread`, 0.5, 'at least 1'],
    ['/options/0/robot/finish/davit/success', Number.NaN, 'finite'],
  ])('refuses %s at %s: the number must stay within its field’s bounds', (path, value, words) => {
    const error = refusal(documentsOf('cormorant-best'), input('value', path), value)
    expect(error.code).toBe('invalid')
    expect(error.message).toContain(`Input 'x' at ${value}`)
    expect(error.message).toContain(words)
  })
})

describe('an input on a Duration', () => {
  const kinds: Duration[] = [
    { kind: 'fixed', seconds: 2 },
    { kind: 'range', low: 1, likely: 2, high: 4 },
    { kind: 'lognormal', median: 2, spread: 1.3 },
    { kind: 'samples', seconds: [1, 2, 2.5, 4] },
  ]
  const shares = [0.03, 0.2, 0.5, 0.77, 0.99]
  // Where a draw would fall below 0 the duration module works with 4,000 equally likely atoms.
  const nextAtom = (duration: AnyDuration, i: number) => {
    const { quantile } = distributionOf(duration)
    return quantile(shares[i]! + 1 / 4000) - quantile(shares[i]! - 1 / 4000) + 1e-9
  }
  const quantiles = (duration: AnyDuration) => shares.map((p) => distributionOf(duration).quantile(p))

  it.each(kinds)('multiplies every draw ($kind)', (duration) => {
    const after = winchAfter(withWinch(duration), input('factor', winch), 1.7)
    expect(after.kind).toBe(duration.kind)
    quantiles(after).forEach((q, i) => void expect(q).toBeCloseTo(quantiles(duration)[i]! * 1.7, 10))
    expect(distributionOf(after).mean).toBeCloseTo(distributionOf(duration).mean * 1.7, 10)
  })

  it.each(kinds)('adds to every draw ($kind)', (duration) => {
    for (const by of [0.6, -0.4]) {
      const after = winchAfter(withWinch(duration), input('add', winch), by)
      quantiles(after).forEach(
        (q, i) => void expect(Math.abs(q - quantiles(duration)[i]! - by)).toBeLessThan(nextAtom(duration, i)),
      )
    }
  })

  it.each(kinds)('never makes a draw negative ($kind)', (duration) => {
    const after = winchAfter(withWinch(duration), input('add', winch), -1.9)
    quantiles(after).forEach((q, i) => {
      expect(q).toBeGreaterThanOrEqual(0)
      expect(Math.abs(q - Math.max(0, quantiles(duration)[i]! - 1.9))).toBeLessThan(nextAtom(duration, i))
    })
  })

  it('adds up where two inputs add to one log-normal, and keeps its variance', () => {
    const duration: Duration = { kind: 'lognormal', median: 2, spread: 1.3 }
    const once = applyInput(withWinch(duration), input('add', winch), 0.5)
    const twice = winchAfter(once, input('add', winch), 0.25)
    expect(distributionOf(twice).mean).toBeCloseTo(distributionOf(duration).mean + 0.75, 12)
    expect(distributionOf(twice).variance).toBeCloseTo(distributionOf(duration).variance, 12)
    const scaled = winchAfter(once, input('factor', winch), 2)
    expect(distributionOf(scaled).mean).toBeCloseTo(2 * (distributionOf(duration).mean + 0.5), 12)
  })

  it('means the Duration of a stage, or of a whole trip, where the pointer names that', () => {
    const documents = documentsOf('dunlin-guess')
    const robot = documents.options[0]!.robot
    const [source] = Object.keys(robot.collect)
    robot.collect[source!] = { whole: { kind: 'fixed', seconds: 6 }, success: 1, retry: null }
    const changed = applyInput(documents, input('factor', `/options/0/robot/collect/${source}`), 1.5)
    expect(changed.options[0]!.robot.collect[source!]).toEqual({
      whole: { kind: 'fixed', seconds: 9 },
      success: 1,
      retry: null,
    })
    const stage = winch.replace('/duration', '')
    expect(winchAfter(withWinch({ kind: 'fixed', seconds: 2 }), input('add', stage), 1)).toEqual({
      kind: 'fixed',
      seconds: 3,
    })
  })

  it('refuses a negative factor, and a pace that would fall below 1', () => {
    const documents = documentsOf('cormorant-best')
    expect(refusal(documents, input('factor', winch), -0.5).message).toContain('negative')
    const pace = '/options/0/robot/drive/pace'
    expect(refusal(documents, input('factor', pace), 0.9).message).toContain('pace')
    expect(applyInput(documents, input('factor', pace), 1.1).options[0]!.robot.drive.pace).toMatchObject({ low: 1.1 })
  })
})
