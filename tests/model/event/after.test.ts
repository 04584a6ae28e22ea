import { describe, expect, it } from 'vitest'
import { type AfterRequest, afterEvent, publishedEvent } from '../../../src/model/event/after/index.ts'
import { rankEvent } from '../../../src/model/event/index.ts'
import type { FieldReport } from '../../../src/model/scouting/field/index.ts'
import { countingForecasts } from '../../../src/model/scouting/record/index.ts'
import type { Observation } from '../../../src/model/scouting/types.ts'
import { game } from '../reference.ts'
import { forecast, moment } from '../scouting/record/forecasts.ts'
import { eventOf, match, result } from './matches.ts'

const teams = '10 11 12 20 21 22'
const matches = [1, 2, 3, 4].map((number) => match(number, '10 11 12', '20 21 22'))
/** We are 10: won, lost, lost; the fourth is to come. */
const results = [result('q1', [50, 40]), result('q2', [30, 44]), result('q3', [41, 60])]
const standing = results.map((each, k) => ({ match: each.match, since: moment(10 * (k + 1) + 5), result: each }))
/** Even scores from 40 to 49, 70 % for us of each, ties among them. */
const forecasts = matches.map(({ id }, k) => forecast(id, 10 * (k + 1), { win: 0.65, tie: 0.1, loss: 0.25 }))

const { auto, pause, teleop } = game.clock
const start = auto + pause
const record = (id: number, of: Partial<Observation>): Observation => ({
  format: 1,
  id: `0195b2a0-0000-7000-8000-${String(id).padStart(12, '0')}`,
  match: 'q1',
  team: '10',
  subject: 'robot',
  origin: 'live',
  scout: 'Ilse the scout',
  device: 'phone-1',
  sequence: id,
  game: 1,
  identifiedBy: 'number',
  note: 'drives like a novice',
  ...of,
})
const watched = [
  // Stands for 6 s, is defended for 10 s; two of three tries hit.
  record(1, {
    timeline: [
      { elapsed: 3, what: 'scored', goal: 'pier', n: 2 },
      { elapsed: start + 5, what: 'stopped' },
      { elapsed: start + 11, what: 'running' },
      { elapsed: start + 20, what: 'defended' },
      { elapsed: start + 30, what: 'released' },
      { elapsed: start + 40, what: 'scored', goal: 'pier', n: 2 },
      { elapsed: start + 50, what: 'missed', goal: 'pier' },
    ],
  }),
  // Stops for good 35 s before the end; somebody else saw the same match and nothing of it.
  record(2, { match: 'q2', timeline: [{ elapsed: start + teleop - 35, what: 'stopped' }] }),
  record(3, { match: 'q2', timeline: [{ elapsed: start + 9, what: 'scored', goal: 'pier' }] }),
  record(4, { match: 'q3', absent: true }),
  record(5, { match: 'q1', team: '20', counts: [{ goal: 'gantry', period: 'teleop', scored: 7, missed: 1 }] }),
  record(6, { match: null, origin: 'practice' }),
].map((observation) => ({ observation, team: observation.team }))

const request: AfterRequest = {
  game,
  team: '10',
  matches,
  results,
  ranking: rankEvent({ game, event: eventOf(teams), matches, results, seed: 1 }),
  counting: countingForecasts(forecasts, matches, standing),
  watched,
  changes: [
    { team: '10', afterMatch: 'q1', note: 'new intake' },
    { team: '20', afterMatch: null },
  ],
  field: null,
  points: null,
  decisions: [],
  design: null,
}

const compared = (difference: number, interval95: [number, number]) => ({
  trips: 30,
  runs: 3,
  model: { mean: 10, sd: 1 },
  field: { mean: 10 + difference, sd: 2, interval95: null },
  difference: { mean: difference, interval95 },
})
/** Three matches of ten trips, which took so much longer. */
const field = (difference: number, interval95: [number, number]): FieldReport => ({
  runs: [1, 2, 3].map((n) => ({
    id: `q${n}`,
    kind: 'match' as const,
    driver: null,
    number: n,
    trips: 10,
    cutOff: 0,
    field: 10 + difference,
    model: 10,
  })),
  trips: 30,
  cutOff: 0,
  leftOut: [],
  sourceUnknown: 0,
  defended: 0,
  whole: { ...compared(difference, interval95), distance: 0.1, p: 0.5, beyond: 0 },
  parts: null,
  legs: [
    { ...compared(difference, interval95), leg: { kind: 'collect', source: 'slipway' }, share: difference, stages: [] },
  ],
  drivers: [],
  distribution: [],
  seen: [],
})

describe('after an event', () => {
  it('our matches stand beside what was said of them, and are judged by those that count', () => {
    const report = afterEvent(request)
    expect(report.matches.map(({ match: id, result: came, state }) => [id, came?.ours, state])).toEqual([
      ['q1', 50, 'scored'],
      ['q2', 30, 'scored'],
      ['q3', 41, 'scored'],
      ['q4', undefined, 'waiting'],
    ])
    // 0.65 and half of 0.1; scores of 40 to 49 lie at 44.5 on average.
    expect(report.matches[0]!.forecast!.win).toBeCloseTo(0.7, 12)
    expect(report.matches[0]!.forecast!.mean).toBeCloseTo(44.5, 12)
    const { expected, came, difference, matches: judged } = report.forecasts!
    expect([judged, came]).toEqual([3, 1])
    expect(expected).toBeCloseTo(2.1, 12)
    // Off by 5.5, −14.5 and −3.5: −25 / 6 on average; their sd is 10.017, over √3.
    expect(difference.mean).toBeCloseTo(-25 / 6, 12)
    expect(difference.error).toBeCloseTo(5.7831, 3)
    expect(report.ranking).toMatchObject({ of: 6, played: 3, won: 1, lost: 2 })
    // The three of us have one win, theirs two; the lot orders each three.
    expect(report.ranking!.rank).toBeGreaterThan(3)
    // One win or fewer of three at 0.7 each comes in 21.6 %, which is no wonder yet.
    expect(report.forecasts!.range80[0]).toBe(1)
    expect(report.questions.map(({ code }) => code)).not.toContain('fewerWins')
  })

  it('says where the robot lost its time: seconds a match, the means of several records, absence apart', () => {
    const report = afterEvent({ ...request, field: field(0.9, [0.4, 1.4]) })
    expect([report.watched, report.absent]).toEqual([2, 1])
    expect(report.losses).toEqual([
      // Ten trips a match, 0.9 s each.
      { kind: 'slower', seconds: expect.closeTo(9, 12), matches: 3 },
      // 35 s in half of the records of one of two matches.
      { kind: 'stopped', seconds: expect.closeTo(35 / 2 / 2, 12), matches: 1 },
      { kind: 'defended', seconds: 5, matches: 1 },
      { kind: 'standing', seconds: 3, matches: 1 },
    ])
    // Autonomous is not among the tries; those of q2 are the mean of two records.
    expect(report.misses.find(({ goal }) => goal === 'pier')).toEqual({ goal: 'pier', tried: 3.5, missed: 1 })
    expect(report.changes).toEqual([{ afterMatch: 'q1', note: 'new intake' }])
  })

  it('asks what the evidence asks, and nothing that chance would bring as often', () => {
    const codes = (more: Partial<AfterRequest>) => afterEvent({ ...request, ...more }).questions.map(({ code }) => code)
    expect(codes({})).toEqual(['stopped', 'absent', 'standing', 'defended'])
    expect(codes({ field: field(0.9, [0.4, 1.4]) })[0]).toBe('slowLeg')
    expect(codes({ field: field(0.9, [-0.1, 1.9]) })).not.toContain('slowLeg')
    // What went better comes last.
    expect(codes({ field: field(-0.9, [-1.4, -0.4]) }).at(-1)).toBe('quickerTrips')
    const points = {
      mean: 30,
      interval80: [28, 32],
      interval95: [27, 33],
      next80: null,
      ownWeight: 1,
    } as AfterRequest['points']
    const option = { id: 'o', name: 'Both goals', robot: { id: 'r' } }
    const decision = (mean: number) =>
      ({
        ...{ format: 1, id: 'd', name: 'D', question: '', decidedOn: '2031-01-01', chosen: 'o' },
        ...{
          assumptions: [],
          result: '',
          wouldChange: [],
          measureNext: [],
          objections: [],
          agreed: [],
          checkAtEvent: '',
        },
        comparison: { id: 'c', revision: 1 },
        snapshot: {
          game,
          options: [option],
          inputs: [],
          result: { options: [{ id: 'o', mean, sd: 1, p10: mean, p50: mean, p90: mean }], beats: {} },
        },
      }) as unknown as AfterRequest['decisions'][number]
    const asked = (mean: number, design = 'r') => codes({ points, decisions: [decision(mean)], design })
    expect(asked(40)[0]).toBe('belowDecision')
    expect(asked(20).at(-1)).toBe('aboveDecision')
    expect(asked(32)).not.toContain('belowDecision')
    // Of another robot it says nothing.
    expect(asked(40, 'other')).not.toContain('belowDecision')
  })
})

describe('what is given to other teams', () => {
  const published = publishedEvent({
    event: eventOf(teams, { halfLife: 4, lessons: 'Never with team 20 again' }),
    game,
    revision: 3,
    matches,
    results,
    ranking: request.ranking,
    watched,
    after: afterEvent({ ...request, field: field(0.9, [0.4, 1.4]) }),
  })

  it('has these fields and no other', () => {
    const paths = new Set<string>()
    const walk = (value: unknown, path: string): void => {
      if (Array.isArray(value)) for (const each of value) walk(each, `${path}[]`)
      else if (value !== null && typeof value === 'object')
        for (const [key, inner] of Object.entries(value)) walk(inner, `${path}.${key}`)
      else paths.add(path)
    }
    walk(published, '')
    expect([...paths].sort()).toEqual(
      `
      .counted[].goals[].autonomous .counted[].goals[].goal .counted[].goals[].teleop
      .counted[].match .counted[].records .counted[].team
      .event.id .event.name .event.startsOn .event.teams[]
      .format
      .game.goals[].id .game.goals[].name .game.id .game.name .game.revision
      .matches[].blue[] .matches[].id .matches[].number .matches[].phase .matches[].play .matches[].red[]
      .own.forecasts.expectedWins .own.forecasts.inside80 .own.forecasts.matches .own.forecasts.wins
      .own.team .own.trips.field .own.trips.model .own.trips.seen
      .published
      .ranking[].lost .ranking[].played .ranking[].rank .ranking[].team .ranking[].tied .ranking[].won
      .results[].blue .results[].match .results[].red
      `
        .trim()
        .split(/\s+/),
    )
    const text = JSON.stringify(published)
    for (const secret of ['Ilse', 'novice', 'phone', 'Never with', '0195b2a0']) expect(text).not.toContain(secret)
  })

  it('counts as records do: autonomous apart, the mean of several, tries that missed and absent robots not', () => {
    const of = (id: string, team: string, goal: string) =>
      published.counted
        .find((each) => each.match === id && each.team === team)
        ?.goals.find((each) => each.goal === goal)
    expect(of('q1', '10', 'pier')).toEqual({ goal: 'pier', autonomous: 2, teleop: 2 })
    expect(of('q2', '10', 'pier')).toEqual({ goal: 'pier', autonomous: 0, teleop: 0.5 })
    expect(of('q1', '20', 'gantry')).toEqual({ goal: 'gantry', autonomous: 0, teleop: 7 })
    expect(of('q3', '10', 'pier')).toBeUndefined()
    expect(published.results).toEqual(
      results.map(({ match: id, red, blue }) => ({ match: id, red: red.points.total, blue: blue.points.total })),
    )
  })
})
