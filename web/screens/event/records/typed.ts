import type { Game } from '../../../../src/model/documents/types.ts'
import { seatOf } from '../../../../src/model/event/seats.ts'
import type { Happening, Match, Observation, Seat } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { typedNumber } from '../../../words/format.ts'

/** What a tap can be corrected to; `kept` holds what the form does not show (where on the field it was). */
export interface TypedTap {
  /** Names it within the form. */
  key: number
  at: string
  what: Happening['what']
  /** Id of a goal or of a source. */
  place: string
  n: string
  estimate: boolean
  kept: Happening | null
}

/** A record as it is typed in the form of its correction. */
export interface TypedRecord {
  /** Empty: outside of a match. */
  match: string
  team: string
  absent: boolean
  left: 'yes' | 'no' | ''
  /** Null: it was only counted. */
  taps: TypedTap[] | null
  /** By `countKey`. */
  counts: { [key: string]: string }
  attempted: string
  achieved: string
  minor: string
  major: string
  defence: string
  received: '' | 'none' | 'some' | 'heavy'
  lost: string
  stopped: string
  departed: string
  note: string
  reason: string
}

export const periods = ['auto', 'teleop'] as const

export const countKey = (goal: string, period: (typeof periods)[number], what: 'scored' | 'missed'): string =>
  `${goal} ${period} ${what}`

/** Happenings that are about a goal, and those that are about a source. */
export const atGoals: readonly Happening['what'][] = ['scored', 'missed']
export const atSources: readonly Happening['what'][] = ['collected']

const write = (value: number | undefined): string => (value === undefined ? '' : typedNumber(String(value)))

export const tapOf = (happening: Happening, key: number): TypedTap => ({
  key,
  at: write(happening.elapsed),
  what: happening.what,
  place: happening.goal ?? happening.source ?? '',
  n: write(happening.n),
  estimate: happening.counted === 'estimate',
  kept: happening,
})

/** @param team whom it is about by the schedule as it is now */
export function typedOf(body: Observation, team: string): TypedRecord {
  const counts: TypedRecord['counts'] = {}
  for (const { goal, period, scored, missed } of body.counts ?? []) {
    counts[countKey(goal, period, 'scored')] = write(scored)
    counts[countKey(goal, period, 'missed')] = write(missed)
  }
  return {
    match: body.match ?? '',
    team,
    absent: body.absent ?? false,
    left: body.leftStart === undefined ? '' : body.leftStart ? 'yes' : 'no',
    taps: body.timeline ? body.timeline.map(tapOf) : null,
    counts,
    attempted: body.finish?.attempted ?? '',
    achieved: body.finish?.achieved ?? '',
    minor: write(body.fouls?.minor),
    major: write(body.fouls?.major),
    defence: write(body.defence?.playedSeconds),
    received: body.defence?.received ?? '',
    lost: write(body.lostSeconds),
    stopped: write(body.stoppedAt),
    departed: write(body.departedAt),
    note: body.note ?? '',
    reason: '',
  }
}

/** What a correction may say anew. */
export type Correctable = Pick<
  Observation,
  | 'match'
  | 'team'
  | 'identifiedBy'
  | 'absent'
  | 'leftStart'
  | 'timeline'
  | 'counts'
  | 'finish'
  | 'defence'
  | 'lostSeconds'
  | 'stoppedAt'
  | 'departedAt'
  | 'fouls'
  | 'note'
>

export interface Read {
  body: Correctable
  /** Where the robot stands in that match; undefined: it does not play in it. */
  seat: Seat | undefined
}

const numberIn = (text: string): number | null => {
  const plain = text.trim().replace('\u2212', '-').replace(',', '.')
  return /^-?\d{1,4}(\.\d+)?$/.test(plain) ? Number(plain) : null
}

/** What was typed as an observation, or what is wrong in which field. What was not said before and is left empty stays unsaid. */
export function readTyped(
  typed: TypedRecord,
  before: Observation,
  { game, matches }: { game: Pick<Game, 'goals' | 'sources'>; matches: readonly Match[] },
): Read | { problems: { [field: string]: string } } {
  const texts = words().records.correct
  const problems: { [field: string]: string } = {}
  const read = (field: string, text: string, of: { least: number; most: number; whole?: boolean }) => {
    if (text.trim() === '') return undefined
    const value = numberIn(text)
    const right = value !== null && value >= of.least && value <= of.most && (!of.whole || Number.isInteger(value))
    if (right) return value
    problems[field] = of.whole
      ? texts.notCount(text.trim(), of.most)
      : of.least < 0
        ? texts.notSeconds(text.trim())
        : texts.notDuration(text.trim())
    return undefined
  }
  const count = (field: string, text: string, most: number) => read(field, text, { least: 0, most, whole: true })
  const duration = (field: string, text: string) => read(field, text, { least: 0, most: 1200 })

  const happening = (tap: TypedTap): Happening => {
    const { kept, what, place, estimate } = tap
    const untouched = kept && write(kept.elapsed) === tap.at
    const elapsed = untouched ? kept.elapsed : read(`tap ${tap.key} at`, tap.at, { least: -60, most: 1200 })
    if (tap.at.trim() === '') problems[`tap ${tap.key} at`] = texts.notSeconds('')
    const n = count(`tap ${tap.key} n`, tap.n, 1000)
    const { goal: _, source: _source, n: _n, counted, ...rest } = kept ?? { elapsed: 0, what }
    const isGoal = game.goals.some(({ id }) => id === place)
    const where = place === '' ? {} : isGoal || kept?.goal === place ? { goal: place } : { source: place }
    const about = estimate ? { counted: 'estimate' as const } : counted === 'each' ? { counted } : {}
    return { ...rest, elapsed: elapsed ?? 0, what, ...where, ...(n === undefined ? {} : { n }), ...about }
  }
  const match = matches.find(({ id }) => id === typed.match)
  const seat = match ? (seatOf(match, typed.team) ?? undefined) : undefined
  const note = typed.note.trim()
  const body: Correctable = {
    match: typed.match === '' ? null : typed.match,
    team: typed.team,
    // Who is not in the match can not be known by a place in it.
    identifiedBy: seat ? before.identifiedBy : 'number',
    ...(typed.absent ? { absent: true } : before.absent === false ? { absent: false } : {}),
    ...(note !== '' && { note }),
  }
  // Of a robot that did not play nothing else was seen.
  if (typed.absent) return { body, seat }

  if (typed.left !== '') body.leftStart = typed.left === 'yes'
  if (typed.taps) {
    const taps = typed.taps.map(happening)
    // As they were pressed, unless somebody moves or adds one.
    const moved = typed.taps.some(({ kept, at }) => !kept || write(kept.elapsed) !== at)
    body.timeline = moved ? taps.toSorted((a, b) => a.elapsed - b.elapsed) : taps
  }
  if (!typed.taps) {
    const counts = game.goals.flatMap(({ id: goal }) =>
      periods.flatMap((period) => {
        const [scored, missed] = (['scored', 'missed'] as const).map((what) => {
          const key = countKey(goal, period, what)
          return count(key, typed.counts[key] ?? '', 1000)
        })
        const said = before.counts?.some((each) => each.goal === goal && each.period === period)
        if (scored === undefined && missed === undefined && !said) return []
        return [{ goal, period, scored: scored ?? 0, missed: missed ?? 0 }]
      }),
    )
    if (counts.length > 0 || before.counts) body.counts = counts
  }
  if (typed.attempted !== '' || typed.achieved !== '' || before.finish)
    body.finish = { attempted: typed.attempted || null, achieved: typed.achieved || null }
  const [minor, major] = [count('minor', typed.minor, 100), count('major', typed.major, 100)]
  if (minor !== undefined || major !== undefined) body.fouls = { minor: minor ?? 0, major: major ?? 0 }
  const defence = duration('defence', typed.defence)
  if (defence !== undefined || typed.received !== '')
    body.defence = { playedSeconds: defence ?? 0, received: typed.received || 'none' }
  const [lost, stopped, departed] = (['lost', 'stopped', 'departed'] as const).map((field) =>
    duration(field, typed[field]),
  )
  if (lost !== undefined) body.lostSeconds = lost
  if (stopped !== undefined) body.stoppedAt = stopped
  if (departed !== undefined) body.departedAt = departed
  return Object.keys(problems).length > 0 ? { problems } : { body, seat }
}
