import { expect, onTestFinished, test } from 'vitest'
import { startServer } from '../api/server.ts'
import { claim } from '../api/team.ts'
import { postgresqlDatabase } from '../engines.ts'

test('Attempts to sign in count in all servers of a database together', async () => {
  const database = await postgresqlDatabase()
  onTestFinished(database.remove)
  const servers = await Promise.all([1, 2].map(() => startServer({ on: database, pool: { threads: 1 } })))
  onTestFinished(async () => {
    await Promise.all(servers.map((server) => server.close()))
  })
  const [one, other] = servers as [(typeof servers)[0], (typeof servers)[0]]
  await claim(one)
  const tried = async (nickname: string) => {
    const statuses: number[] = []
    for (const server of [one, other, one, other, one]) {
      const sent = { nickname, passphrase: 'not the right one', device: { name: 'Desk' } }
      statuses.push((await server.send('POST', '/api/session', sent)).status)
    }
    return statuses
  }
  const next = { nickname: 'Kit', passphrase: 'not the right one', device: { name: 'Desk' } }
  expect(await tried('Kit')).toEqual([401, 401, 401, 401, 401])
  // Each alone has seen three or two of them.
  await expect.poll(async () => (await other.send('POST', '/api/session', next)).status).toBe(429)
  expect((await one.send('POST', '/api/session', next)).status).toBe(429)
})
