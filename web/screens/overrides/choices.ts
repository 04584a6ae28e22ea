import { overriddenThing } from '../../../src/model/documents/overrides.ts'
import type { Override } from '../../../src/model/documents/records.ts'
import type { Duration } from '../../../src/model/documents/types.ts'
import { type NumberRules, readNumber } from '../../shell/fields/parse.ts'
import { words } from '../../words/catalogue.ts'
import { legsOf } from './legs.ts'
import { type About, type Documents, overriddenName } from './words.ts'

/** A number that can be overridden: the beginning of an override. */
export interface Choice {
  key: string
  name: string
  about: About
}

const unset = { id: '', reason: '', who: '', on: '' }

/** The override of a number, with nothing in it yet. */
function blank(about: About): Override {
  const anything: Duration = { kind: 'fixed', seconds: 0 }
  if (about.kind === 'leg') return { ...unset, ...about, whole: anything }
  if (about.kind === 'travel') return { ...unset, ...about, seconds: 0 }
  if (about.kind === 'pieces') return { ...unset, ...about, pieces: 0 }
  return about.kind === 'success' ? { ...unset, ...about, probability: 0 } : { ...unset, ...about, points: 0 }
}

/**
 * What can be overridden in a comparison and is not yet: the points of each option, in all and of its routine, its pieces on
 * each goal, and of its robots each leg, each finish's chance, and drives between two spots, which are still to be chosen.
 */
export function choicesOf(documents: Documents, overrides: readonly Override[]): Choice[] {
  const { game, options } = documents
  const robots = [...new Map(options.map(({ robot }) => [robot.id, robot])).values()]
  const abouts: About[] = [
    ...options.map(({ id }) => ({ kind: 'points' as const, option: id })),
    ...options.flatMap(({ id, auto }) => (auto === null ? [] : [{ kind: 'auto' as const, option: id }])),
    ...options.flatMap(({ id, robot }) =>
      game.goals.flatMap((goal) =>
        (robot.score[goal.id] ?? []).length > 0 ? [{ kind: 'pieces' as const, option: id, goal: goal.id }] : [],
      ),
    ),
    ...robots.flatMap((robot): About[] => [
      ...legsOf(game, robot).map((leg) => ({ kind: 'leg' as const, robot: robot.id, leg })),
      ...game.finishes.flatMap(({ id }) =>
        robot.finish[id] ? [{ kind: 'success' as const, robot: robot.id, finish: id }] : [],
      ),
      { kind: 'travel', robot: robot.id, from: '', to: '' },
    ]),
  ]
  const taken = new Set(overrides.map(overriddenThing))
  return abouts.flatMap((about) => {
    const key = overriddenThing(blank(about))
    return taken.has(key) ? [] : [{ key, name: overriddenName(about, documents), about }]
  })
}

const rulesOf = (about: About): NumberRules => {
  if (about.kind === 'success') return { min: 0, max: 1, percent: true }
  if (about.kind === 'travel') return { min: 0.01, max: 600 }
  if (about.kind === 'pieces') return { min: 0, max: 10_000 }
  return about.kind === 'leg' ? { min: 0, max: 600 } : { min: -10_000, max: 10_000 }
}

export interface Typed {
  value: string
  low: string
  high: string
  reason: string
  who: string
}

export type Wrong = { [field in keyof Typed | 'ends']?: string }

/** An override from what was typed, or what is wrong beside each field. `now`: ISO 8601. */
export function overrideFrom(
  about: About,
  typed: Typed,
  made: { id: string; now: string; overrides?: readonly Override[] },
): { override: Override } | { wrong: Wrong } {
  const texts = words().overrides.add
  const wrong: Wrong = {}
  const rules = rulesOf(about)
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
  if (about.kind === 'travel') {
    const taken = (made.overrides ?? []).some((one) => overriddenThing(one) === overriddenThing(blank(about)))
    if (about.from === '' || about.to === '' || about.from === about.to) wrong.ends = texts.endsNeeded
    else if (taken) wrong.ends = texts.endsTaken
  }
  if (about.kind !== 'leg') {
    if (Object.keys(wrong).length > 0) return { wrong }
    if (about.kind === 'travel') return { override: { ...shared, ...about, seconds: value } }
    if (about.kind === 'success') return { override: { ...shared, ...about, probability: value } }
    if (about.kind === 'pieces') return { override: { ...shared, ...about, pieces: value } }
    return { override: { ...shared, ...about, points: value } }
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
