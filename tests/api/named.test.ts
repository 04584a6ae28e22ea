import { expect, test } from 'vitest'
import { eventId } from '../faults/harbourEvent.ts'
import { richEvent } from './richEvent.ts'
import { startServer } from './server.ts'

test('An archive leaves no name that a lead has removed, though the file comes again, and keeps the records', async () => {
  const source = await startServer({ pool: { threads: 1 } })
  const target = await startServer({ pool: { threads: 1 } })
  const rich = await richEvent(source)
  const file = await rich.lead.get(`/api/events/${eventId}/archive`)
  const bring = () => target.send('POST', '/api/events/archive', file.body)
  expect((await bring()).status).toBe(200)
  const { id } = rich.scout
  expect((await target.get('/api/named')).body).toContainEqual({ id, nickname: 'Bo of the stands' })
  const records = async () => (await target.get(`/api/records?event=${eventId}`)).body.records.length
  const before = await records()
  expect((await target.bare('DELETE', `/api/named/${id}`)).body).toEqual({ forgotten: true })
  expect((await bring()).body).toMatchObject({ differs: [] })
  expect((await target.get('/api/named')).body).toContainEqual({ id, nickname: null })
  expect((await target.get(`/api/events/${eventId}/board`)).body.people).toContainEqual({ id, nickname: null })
  const { people } = (await target.get(`/api/events/${eventId}/archive`)).body.contents
  expect(people.map((each: { id: string }) => each.id)).not.toContain(id)
  expect(await records()).toBe(before)
  expect((await target.bare('DELETE', '/api/named/nobody')).body.error).toMatchObject({
    code: 'notFound',
    path: ['person'],
  })
  await source.close()
  await target.close()
})
