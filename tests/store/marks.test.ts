import { expect, test } from 'vitest'
import { match, result } from '../model/event/matches.ts'
import { scratchWorkspace } from './scratch.ts'

const by = { person: null, device: null }
const event = 'harbour-days'

test('The marks of an event are others after every change, and the same while nothing changes', async () => {
  const { team } = await scratchWorkspace()
  const { events } = team
  expect(await events.marks(event, 0)).toBeNull()
  const body = { name: 'Harbour days', game: 'harbour' }
  const document = { kind: 'event' as const, id: event, name: 'Harbour days', body }
  await team.save({ ...document, base: null })
  expect(await events.marks(event, 0)).toMatchObject({ revision: 1, body, newest: 0, since: 0 })

  const seen = { frame: new Set<string>(), rest: new Set<string>() }
  const note = async () => {
    const now = (await events.marks(event, 0))!
    expect(await events.marks(event, 0)).toEqual(now)
    for (const of of ['frame', 'rest'] as const) seen[of].add(now[of])
    return [seen.frame.size, seen.rest.size]
  }
  const edit = async (of: { put?: ReturnType<typeof match>[]; remove?: string[] }) => {
    const { mark } = await events.matches(event)
    expect(await events.edit(event, { put: [], remove: [], ...of, mark, by })).toHaveProperty('applied')
  }
  const seat = async (position: 1 | 2, person: string | null) => {
    const { mark } = await events.assignments(event)
    const of = { match: 'q1', seat: { alliance: 'red' as const, position }, person }
    expect(await events.assign(event, { assignments: [of], mark, by })).toHaveProperty('applied')
  }
  const enter = async (base: number, score: [number, number] | null) => {
    const { revision } = (await events.matches(event)).matches.find((each) => each.match.id === 'q1')!
    const of = { match: 'q1', base, matchRevision: revision, result: score && result('q1', score) }
    expect(await events.enter(event, [of], by)).toHaveProperty('applied')
  }
  expect(await note()).toEqual([1, 1])
  // The frame: schedule and document.
  await edit({ put: [match(1, 'A B C', 'D E F'), match(2, 'F E D', 'C B A')] })
  expect(await note()).toEqual([2, 1])
  await edit({ put: [match(1, 'A B E', 'D C F')] })
  expect(await note()).toEqual([3, 1])
  await edit({ remove: ['q2'] })
  expect(await note()).toEqual([4, 1])
  await edit({ put: [match(2, 'F E D', 'C B A')] })
  expect(await note()).toEqual([5, 1])
  await team.save({ ...document, base: 1 })
  expect(await note()).toEqual([6, 1])
  await team.remove('event', event)
  expect(await note()).toEqual([7, 1])
  // The rest: seats, also two that change hands, results, choices.
  await seat(1, 'person-1')
  expect(await note()).toEqual([7, 2])
  await seat(2, 'person-2')
  expect(await note()).toEqual([7, 3])
  await events.takeSeat(event, { match: 'q1', seat: { alliance: 'red', position: 1 }, person: 'person-2', by })
  expect(await note()).toEqual([7, 4])
  await enter(0, [40, 30])
  expect(await note()).toEqual([7, 5])
  await enter(1, [41, 30])
  expect(await note()).toEqual([7, 6])
  await enter(2, null)
  expect(await note()).toEqual([7, 7])
  await team.records.choose(event, { match: 'q1', team: 'A', record: null, person: null, reason: null })
  expect(await note()).toEqual([7, 8])
  // Of another event and of another workspace nothing is seen.
  const { mark } = await events.matches('elsewhere')
  await events.edit('elsewhere', { put: [match(1, 'A B C', 'D E F')], remove: [], mark, by })
  expect(await note()).toEqual([7, 8])
})
