import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type DealRequest, deal, enoughFor, seatKey } from '../../../src/model/event/index.ts'

const people = (count: number) => Array.from({ length: count }, (_, index) => `p${index}`)
const matches = (count: number) => Array.from({ length: count }, (_, index) => ({ id: `q${index + 1}`, pause: false }))

/** Counted anew, in another way than the model does: the longest run of matches without `rest` free ones in a row, or a pause. */
function longestRun(request: DealRequest, watched: ReadonlySet<string>): number {
  const stretches = request.matches.map(({ id, pause }) => (pause ? '|' : '') + (watched.has(id) ? 'x' : '.')).join('')
  const breaks = new RegExp(`\\||\\.{${request.rest},}`)
  return Math.max(...stretches.split(breaks).map((stretch) => stretch.replaceAll('.', '').length))
}

const watchedBy = (answer: ReturnType<typeof deal>, person: string) =>
  new Set(answer.assignments.filter((each) => each.person === person).map(({ match }) => match))

const requests = fc
  .record({
    matches: fc.array(fc.boolean(), { minLength: 1, maxLength: 45 }),
    count: fc.integer({ min: 1, max: 20 }),
    longest: fc.integer({ min: 1, max: 9 }),
    rest: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ matches, count, longest, rest }): DealRequest => {
    // A pause seldom: after a tenth of the matches or so.
    const rows = matches.map((flag, index) => ({ id: `q${index + 1}`, pause: flag && index % 7 === 3 }))
    return { matches: rows, people: people(count), longest, rest }
  })

describe('sharing out who watches whom', () => {
  test('never puts a person twice into a match nor two into a seat, fills what can be filled, and keeps or reports breaks', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const answer = deal(request)
        for (const { id } of request.matches) {
          const own = answer.assignments.filter(({ match }) => match === id)
          expect(new Set(own.map(({ seat }) => seatKey(seat))).size).toBe(6)
          const there = own.flatMap(({ person }) => person ?? [])
          expect(new Set(there).size).toBe(there.length)
          expect(there.length).toBe(Math.min(6, request.people.length))
        }
        for (const { person, longest, matches } of answer.loads) {
          const watched = watchedBy(answer, person)
          expect(matches).toBe(watched.size)
          expect(longest).toBe(longestRun(request, watched))
          expect(longest > request.longest).toBe(answer.broken.some((each) => each.person === person))
        }
      }),
      { numRuns: 120, seed: 7 },
    )
  })

  test('keeps every break and fills every seat as soon as enough people are there', () => {
    fc.assert(
      fc.property(requests, fc.integer({ min: 0, max: 6 }), (request, more) => {
        const answer = deal({ ...request, people: people(enoughFor(request) + more) })
        expect(answer.broken).toEqual([])
        expect(answer.empty).toBe(0)
      }),
      { numRuns: 60, seed: 11 },
    )
  })

  // With just enough people and long breaks who begins first watches more, and nobody rested is left to hand a match to.
  test('keeps loads within one match where breaks are of one match, or half as many people more than enough are there', () => {
    fc.assert(
      fc.property(requests, fc.boolean(), fc.integer({ min: 0, max: 4 }), (request, short, more) => {
        const asked = short ? { ...request, rest: 1 } : request
        const enough = enoughFor(asked)
        const answer = deal({ ...asked, people: people(more + (short ? enough : Math.ceil(1.5 * enough))) })
        const loads = answer.loads.map((load) => load.matches)
        expect(answer.broken).toEqual([])
        expect(Math.max(...loads) - Math.min(...loads)).toBeLessThanOrEqual(1)
      }),
      { numRuns: 60, seed: 13 },
    )
  })

  test('says with six people and no break possible that eight would be enough for six on and two off', () => {
    const answer = deal({ matches: matches(20), people: people(6), longest: 6, rest: 2 })
    expect(answer.enough).toBe(8)
    // Beyond the sixth match each of the six watches on: 14 matches.
    expect(answer.broken).toHaveLength(6 * 14)
  })

  test('lets people watch in stints, not every other match', () => {
    const answer = deal({ matches: matches(48), people: people(12), longest: 6, rest: 2 })
    expect(answer.loads.map((load) => load.matches)).toEqual(people(12).map(() => 24))
    expect(answer.loads.map(({ longest }) => longest)).toEqual(people(12).map(() => 6))
  })

  test('changes seats: in 48 matches of six people each is eight times at each seat', () => {
    const answer = deal({ matches: matches(48), people: people(6), longest: 48, rest: 1 })
    const often = new Map<string, number>()
    for (const { person, seat } of answer.assignments) {
      const key = `${person} ${seatKey(seat)}`
      often.set(key, (often.get(key) ?? 0) + 1)
    }
    expect([...often.values()].sort()).toEqual(Array.from({ length: 36 }, () => 8))
  })

  test('leaves seats that are kept, and matches that are over, as they are', () => {
    const kept = [
      { match: 'q1', seat: { alliance: 'red', position: 1 } as const, person: 'p3' },
      { match: 'q2', seat: { alliance: 'blue', position: 2 } as const, person: 'elsewhere' },
    ]
    const two = matches(3).map((match, index) => ({ ...match, closed: index === 0 }))
    const answer = deal({ matches: two, people: people(9), longest: 5, rest: 1, kept })
    const at = (match: string) => answer.assignments.filter((each) => each.match === match).map(({ person }) => person)
    expect(at('q1')).toEqual(['p3', null, null, null, null, null])
    expect(at('q2')[4]).toBe('elsewhere')
    expect(new Set(at('q2')).size).toBe(6)
    expect(answer.empty).toBe(0)
  })

  test('is always the same for the same request', () => {
    const request = { matches: matches(30), people: people(11), longest: 4, rest: 2 }
    expect(deal(request)).toEqual(deal(structuredClone(request)))
  })
})
