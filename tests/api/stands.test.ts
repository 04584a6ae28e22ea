import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../seed/game.ts'
import { type Server, startServer } from './server.ts'

let server: Server
const event = {
  format: 1,
  id: 'spring',
  name: 'Spring tide',
  game: 'breakwater',
  teams: [{ team: '90001' }, { team: '90002', name: 'Gulls' }],
  startsOn: '2026-11-28',
}

beforeAll(async () => {
  server = await startServer()
  await server.send('PUT', '/api/documents/game/breakwater', { base: null, body: game })
  await server.send('PUT', '/api/documents/event/spring', { base: null, body: event })
})
afterAll(() => server.close())

describe('what a phone in the stands takes along', () => {
  test('is the event with the game that it is played by, and a mark', async () => {
    const { status, body } = await server.get('/api/stands/spring')
    expect(status).toBe(200)
    expect(body.event).toEqual(event)
    expect(body.game).toEqual({ revision: 1, body: game })
    expect(body.mark).toMatch(/^[\w-]{22}$/)
  })

  test('is only the mark for a phone that has it already, until something changes', async () => {
    const { body: first } = await server.get('/api/stands/spring')
    const { body: same } = await server.get(`/api/stands/spring?since=${first.mark}`)
    expect(same).toEqual({ same: true, mark: first.mark, serverTime: same.serverTime })
    await server.send('PUT', '/api/documents/game/breakwater', {
      base: 1,
      body: { ...game, name: 'Breakwater, mended' },
    })
    const { body: next } = await server.get(`/api/stands/spring?since=${first.mark}`)
    expect(next.game.revision).toBe(2)
    expect(next.mark).not.toBe(first.mark)
  })

  test('is a sentence where there is no such event', async () => {
    const { status, body } = await server.get('/api/stands/autumn')
    expect(status).toBe(404)
    expect(body.error.message).toContain('autumn')
  })

  test('the events to choose from are listed, newest first', async () => {
    await server.send('PUT', '/api/documents/event/older', {
      base: null,
      body: { ...event, id: 'older', name: 'Neap', startsOn: '2026-10-01' },
    })
    const { body } = await server.get('/api/stands')
    expect(body).toEqual([
      { id: 'spring', name: 'Spring tide', startsOn: '2026-11-28' },
      { id: 'older', name: 'Neap', startsOn: '2026-10-01' },
    ])
  })
})
