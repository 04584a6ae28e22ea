import { overriddenThing } from '../../../src/model/documents/overrides.ts'
import type { Override } from '../../../src/model/documents/records.ts'
import type { Duration } from '../../../src/model/documents/types.ts'
import { readNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { legsOf } from './legs.ts'
import { type Documents, overriddenName } from './words.ts'

/** A number that can be overridden: the beginning of an override. */
export interface Choice {
  key: string
  name: string
  about: { kind: 'points'; option: string } | Pick<Extract<Override, { kind: 'leg' }>, 'kind' | 'robot' | 'leg'>
}

const unset = { id: '', reason: '', who: '', on: '' }

/** What can be overridden in a comparison and is not yet: the points of each option, and each leg of its robots. */
export function choicesOf(documents: Documents, overrides: readonly Override[]): Choice[] {
  const { game, options } = documents
  const robots = [...new Map(options.map(({ robot }) => [robot.id, robot])).values()]
  const abouts: Choice['about'][] = [
    ...options.map(({ id }) => ({ kind: 'points' as const, option: id })),
    ...robots.flatMap((robot) => legsOf(game, robot).map((leg) => ({ kind: 'leg' as const, robot: robot.id, leg }))),
  ]
  const taken = new Set(overrides.map(overriddenThing))
  const anything: Duration = { kind: 'fixed', seconds: 0 }
  return abouts.flatMap((about) => {
    const key = overriddenThing(
      about.kind === 'points' ? { ...unset, ...about, points: 0 } : { ...unset, ...about, whole: anything },
    )
    return taken.has(key) ? [] : [{ key, name: overriddenName(about, documents), about }]
  })
}

export interface Typed {
  value: string
  low: string
  high: string
  reason: string
  who: string
}

export type Wrong = { [field in keyof Typed]?: string }

/** An override from what was typed, or what is wrong beside each field. `now`: ISO 8601. */
export function overrideFrom(
  about: Choice['about'],
  typed: Typed,
  made: { id: string; now: string },
): { override: Override } | { wrong: Wrong } {
  const texts = words().overrides.add
  const wrong: Wrong = {}
  const rules = about.kind === 'points' ? { min: -10_000, max: 10_000 } : { min: 0, max: 600 }
  const read = (field: 'value' | 'low' | 'high'): number => {
    const found = readNumber(typed[field], rules)
    if ('value' in found) return found.value
    wrong[field] = found.error
    return Number.NaN
  }
  const value = read('value')
  if (typed.reason.trim() === '') wrong.reason = texts.reasonNeeded
  if (typed.who.trim() === '') wrong.who = texts.whoNeeded
  const shared = { id: made.id, reason: typed.reason.trim(), who: typed.who.trim(), on: `${made.now.slice(0, 16)}Z` }
  if (about.kind === 'points') {
    return Object.keys(wrong).length > 0 ? { wrong } : { override: { ...shared, ...about, points: value } }
  }
  const varies = typed.low.trim() !== '' || typed.high.trim() !== ''
  let whole: Duration = { kind: 'fixed', seconds: value }
  if (varies) {
    if (typed.low.trim() === '') wrong.low = texts.both
    if (typed.high.trim() === '') wrong.high = texts.both
    const [low, high] = [wrong.low ? Number.NaN : read('low'), wrong.high ? Number.NaN : read('high')]
    if (low > value || value > high) wrong.low = texts.order
    whole = { kind: 'range', low, likely: value, high }
  }
  return Object.keys(wrong).length > 0 ? { wrong } : { override: { ...shared, ...about, whole } }
}
