import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { observation, row } from '../../../src/api/contracts/scouting/index.ts'
import type { Match, Side, Slot } from '../../../src/model/scouting/types.ts'
import {
  atSpeed,
  elapsedOf,
  leftOf,
  minutes,
  periodAt,
  shifted,
  started,
  stopped,
} from '../../../web/stands/record/clock.ts'
import { type About, type Draft, freshDraft, standing, type Tap } from '../../../web/stands/record/draft.ts'
import { formOf, togglePress } from '../../../web/stands/record/form.ts'
import { nearest, seenFrom, touchedAt } from '../../../web/stands/record/ground.ts'
import { observationOf, rowOf } from '../../../web/stands/record/observation.ts'
import { nextSeat, slotAt, withTakeovers } from '../../../web/stands/record/seats.ts'

const about: About = {
  match: 'q12',
  seat: { alliance: 'red', position: 2 },
  team: '90012',
  identifiedBy: 'position',
  subject: 'robot',
  origin: 'live',
  mode: 'timeline',
}
const draftOf = (patch: Partial<Draft> = {}): Draft => ({
  ...freshDraft({
    id: '01940000-0000-7000-8000-000000000001',
    event: 'spring',
    scout: 'mia',
    game: { id: 'breakwater', revision: 3 },
    about,
    begun: 0,
  }),
  ...patch,
})
const origin = { device: 'phone-a', sequence: 7 }

describe('the form', () => {
  test('has a button for everything of the game that a robot can do', () => {
    const form = formOf(game, about)
    expect(form.sources.map(({ id }) => id)).toEqual(['outer', 'channel'])
    expect(form.goals.map(({ id }) => id)).toEqual(['piers', 'gantry', 'lightship'])
    expect(form.finishes.map(({ id }) => id)).toEqual(['dry-dock', 'davit'])
    expect(form.intervals).toEqual(['unseen', 'stopped', 'defending', 'defended'])
    expect(form.leaves).toBe(true)
  })

  test('of a human player neither drives nor finishes, and a count has no times', () => {
    const human = formOf(game, { subject: 'human', mode: 'timeline' })
    expect([human.sources, human.finishes, human.starts, human.departs]).toEqual([[], [], [], false])
    expect(formOf(game, { subject: 'robot', mode: 'counts' }).intervals).toEqual([])
  })

  test('begins an interval with one press and ends it with the next', () => {
    const tap = (what: Tap['what']): Tap => ({ what, elapsed: 1 })
    expect(togglePress('unseen', [])).toEqual({ what: 'unseen' })
    expect(togglePress('unseen', [tap('unseen'), tap('stopped')])).toEqual({ what: 'seen' })
    expect(togglePress('unseen', [tap('unseen'), tap('seen')])).toEqual({ what: 'unseen' })
  })
})

describe('a finished draft', () => {
  const taps: Tap[] = [
    { what: 'collected', source: 'outer', elapsed: 3.21 },
    { what: 'scored', goal: 'piers', elapsed: 5, x: 1.43, y: 7.08 },
    { what: 'scored', goal: 'gantry', n: 12, counted: 'estimate', elapsed: 40.5 },
    { what: 'left', elapsed: 130 },
  ]

  test('is a document that its contract takes, with times shifted as the clock was', () => {
    const draft = draftOf({
      clock: { ...standing, shift: 2 },
      said: {
        startSpot: 'quay-north',
        leftStart: true,
        attempted: 'davit',
        achieved: null,
        minor: 1,
        major: 0,
        note: ' ',
      },
    })
    const made = observationOf(draft, taps, origin)
    expect(observation.parse(made)).toEqual(made)
    expect(made.timeline!.map(({ elapsed }) => elapsed)).toEqual([5.2, 7, 42.5, 132])
    expect(made).toMatchObject({
      game: 3,
      leftStart: true,
      finish: { attempted: 'davit', achieved: null },
      fouls: { minor: 1, major: 0 },
    })
    expect(made).not.toHaveProperty('note')
    expect(made).not.toHaveProperty('departedAt')
    // Nothing changes on its way through JSON, so that the same row is the same content.
    expect(JSON.parse(JSON.stringify(made))).toEqual(made)
  })

  test('of a count says how many by goal and period, and what has no place in a timeline', () => {
    const counted: Tap[] = [
      { what: 'scored', goal: 'piers', elapsed: 0, period: 'auto' },
      { what: 'scored', goal: 'piers', elapsed: 0, period: 'teleop' },
      { what: 'missed', goal: 'piers', elapsed: 0, period: 'teleop' },
      { what: 'scored', goal: 'piers', elapsed: 0, n: 5, counted: 'estimate', period: 'teleop' },
    ]
    const said = { minor: 0, major: 0, note: '', lostSeconds: 20, defended: 'some' as const }
    const made = observationOf(draftOf({ about: { ...about, mode: 'counts' }, said }), counted, origin)
    expect(observation.parse(made)).toEqual(made)
    expect(made.counts).toEqual([
      { goal: 'piers', period: 'auto', scored: 1, missed: 0 },
      { goal: 'piers', period: 'teleop', scored: 6, missed: 1 },
    ])
    expect(made).toMatchObject({ lostSeconds: 20, defence: { playedSeconds: 0, received: 'some' } })
  })

  test('of a robot that did not come says only that', () => {
    const made = observationOf(draftOf({ said: { absent: true, minor: 0, major: 0, note: '' } }), taps, origin)
    expect(observation.parse(made)).toEqual(made)
    expect(made.absent).toBe(true)
    expect(made).not.toHaveProperty('timeline')
  })

  test('is sent as a row that the contract takes, a practice run without match and seat too', () => {
    const run = { ...about, match: null, seat: null, origin: 'practice', driver: 'Kit', robotRevision: 4 } as const
    for (const draft of [draftOf(), draftOf({ about: { ...run, identifiedBy: 'number' } })]) {
      const made = rowOf(draft, taps, { ...origin, made: '2026-11-27T10:00:00.000Z' })
      expect(row.parse(made)).toEqual(made)
    }
  })
})

describe('the clock', () => {
  test('goes on by itself, is shifted, stopped, and sped up for a video', () => {
    const running = started(standing, 1_000_000)
    expect(elapsedOf(running, 1_010_000)).toBe(10)
    expect(elapsedOf(shifted(running, -1), 1_010_000)).toBe(9)
    const fast = atSpeed(running, 2, 1_010_000)
    expect(elapsedOf(fast, 1_015_000)).toBe(20)
    expect(elapsedOf(stopped(fast, 1_015_000), 9_000_000)).toBe(20)
  })

  test('shows what the hall’s clock shows', () => {
    // Breakwater: 15 s of autonomous, a pause of 2 s, 135 s of teleop.
    expect([0, 14.9, 15, 17, 151.9, 152].map((elapsed) => periodAt(game.clock, elapsed))).toEqual([
      'auto',
      'auto',
      'pause',
      'teleop',
      'teleop',
      'over',
    ])
    expect(minutes(leftOf(game.clock, 17))).toBe('2:15')
    expect(minutes(leftOf(game.clock, 151.5))).toBe('0:01')
  })
})

describe('the field from where one sits', () => {
  const views = (['red', 'blue'] as const).flatMap((alliance) =>
    (['left', 'right'] as const).map((redWall) => ({ alliance, redWall })),
  )

  test.each(['mirror', 'rotate'] as const)(
    'leads back to the point that was touched, on a field that is a %s',
    (symmetry) => {
      for (const view of views) {
        const field = { ...game.field, symmetry }
        const [x, y] = touchedAt(field, view, seenFrom(field, view, [1.4, 1.1]))
        expect(x).toBeCloseTo(1.4, 9)
        expect(y).toBeCloseTo(1.1, 9)
      }
    },
  )

  test('has the own wall where it stands in the hall', () => {
    // 16.6 m by 8.2 m; a point 1.4 m from the own wall.
    const x = (view: (typeof views)[number]) => seenFrom(game.field, view, [1.4, 1.1])[0]
    expect(views.map(x).map((each) => Math.round(each * 10) / 10)).toEqual([1.4, 15.2, 15.2, 1.4])
  })

  test('finds the start nearest to the finger, and none where it is far off', () => {
    expect(nearest(game.starts, [1.5, 3.6], 2)?.id).toBe('quay-middle')
    expect(nearest(game.starts, [9, 4], 2)).toBeNull()
  })
})

describe('the next seat', () => {
  const slot = (team: string, position?: 1 | 2 | 3): Slot => ({
    team,
    counts: true,
    state: 'expected',
    ...(position && { position }),
  })
  const match = (number: number): Match => ({
    id: `q${number}`,
    phase: 'qualification',
    number,
    play: 1,
    red: [slot('1'), slot('2'), slot('3')],
    blue: [slot('4'), slot('5', 3), slot('6', 2)],
  })
  const matches = [1, 2, 3, 4].map(match)
  const red2 = { alliance: 'red', position: 2 } as const
  const assignments = [1, 3, 4].map((number) => ({ match: `q${number}`, seat: red2, person: 'mia' }))
  const of = (recorded: string[], list = matches) =>
    nextSeat({ matches: list, assignments }, { person: 'mia', recorded: new Set(recorded), now: 0 })?.match.id

  test('is the first of one’s own after the last match that was recorded', () => {
    expect(of([])).toBe('q1')
    expect(of(['q1'])).toBe('q3')
    expect(of(['q2'])).toBe('q3')
    expect(of(['q4'])).toBeUndefined()
  })

  test('leaves out what is over, and a play that is played again', () => {
    const over = (side: Side) => side.map((each): Slot => ({ ...each, state: 'played' })) as Side
    const first = match(1)
    const played = { ...first, red: over(first.red), blue: over(first.blue) }
    expect(of([], [played, ...matches.slice(1)])).toBe('q3')
    expect(of([], [...matches, { ...match(1), id: 'q1again', voids: 'q1' }])).toBe('q3')
  })

  test('finds a robot by the position that it has been given', () => {
    expect(slotAt(matches[0]!, { alliance: 'blue', position: 2 }).team).toBe('6')
    expect(slotAt(matches[0]!, { alliance: 'blue', position: 1 }).team).toBe('4')
  })

  test('is a seat that was taken over, before the server knows of it', () => {
    const taken = withTakeovers(assignments, [{ match: 'q2', ...red2 }], 'mia')
    expect(
      nextSeat({ matches, assignments: taken }, { person: 'mia', recorded: new Set(['q1']), now: 0 })?.match.id,
    ).toBe('q2')
  })
})
