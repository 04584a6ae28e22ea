import { expect, test } from 'vitest'
import { event, seen } from '../faults/harbourEvent.ts'
import { harbour } from '../model/documents/harbour.ts'
import { startServer } from './server.ts'
import { claim, join } from './team.ts'

test('of a large batch a scout’s own rows are held, and what somebody else recorded is refused; a lead may bring both', async () => {
  const server = await startServer()
  const lead = await claim(server)
  const game = harbour()
  await lead.send('PUT', `/api/documents/game/${game.id}`, { base: null, body: game })
  await lead.send('PUT', `/api/documents/event/${event.id}`, { base: null, body: event })
  const scout = await join(server, lead, { role: 'scout', nickname: 'Ben' })
  const rows = Array.from({ length: 60 }, (_, index) => seen(1, index, { scout: index === 7 ? 'another' : scout.id }))
  const batch = { device: scout.device, unsent: 0, rows }
  const outcomes = async (who: typeof lead) =>
    (await who.send('POST', '/api/records', batch)).body.answers.map(({ outcome }: { outcome: string }) => outcome)
  const own = rows.map((_, index) => (index === 7 ? 'refused' : 'held'))
  expect(await outcomes(scout)).toEqual(own)
  expect(await outcomes(lead)).toEqual(rows.map(() => 'held'))
  // What is known by now is not the scout’s for that.
  expect(await outcomes(scout)).toEqual(own)
  await server.close()
})
