import { expect, test } from 'vitest'
import { startServer } from './server.ts'
import { claim, join } from './team.ts'

test('A stream begins with how long ago each kind of news was told, to whoever looks at the event', async () => {
  const server = await startServer()
  const lead = await claim(server)
  const scout = await join(server, lead, { role: 'scout', nickname: 'Kit' })
  // With processes beside this one, what it was told before somebody looked counts as told then.
  const looking = new AbortController()
  await fetch(`${server.url}/api/events/anything/live`, { headers: { cookie: scout.cookie }, signal: looking.signal })
  looking.abort()
  await new Promise((resolve) => setTimeout(resolve, 5))
  const begun = performance.now()
  await lead.send('PUT', `/api/people/${scout.id}/role`, { role: 'viewer' })
  const closing = new AbortController()
  const { signal } = closing
  const stream = await fetch(`${server.url}/api/events/anything/live`, { headers: { cookie: scout.cookie }, signal })
  const reader = stream.body!.getReader()
  let first = ''
  while (!first.includes('event: before') || !first.endsWith('\n\n')) {
    first += new TextDecoder().decode((await reader.read()).value)
  }
  const ages = JSON.parse(/event: before\ndata: (.*)\n/.exec(first)![1]!)
  expect(ages.people).toBeLessThanOrEqual(Math.ceil(performance.now() - begun))
  expect(ages.people).toBeLessThan(ages.results)
  closing.abort()
  await server.close()
})
