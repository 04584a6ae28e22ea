import { renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { onPostgresql } from '../engines.ts'
import { scratchFolder } from '../store/scratch.ts'
import { startServer } from './server.ts'
import { claim } from './team.ts'

describe('Whoever watches the server', () => {
  test('learns whether it is alive and ready', async () => {
    const server = await startServer()
    try {
      expect((await server.get('/ready')).body).toEqual({ status: 'ready' })
      expect((await server.get('/health')).body.status).toBe('ok')
    } finally {
      await server.close()
    }
  })

  test.skipIf(onPostgresql())('learns that the database’s file was taken away, and that it is back', async () => {
    const folder = scratchFolder()
    const file = join(folder, 'team.db')
    const server = await startServer({ file, pool: { threads: 1 } })
    const ready = async () => {
      const { status, body, headers } = await server.get('/ready')
      return [status, body.status ?? body.error.code, headers.get('retry-after')]
    }
    const up = async () => /^cyclewright_database_up (\d)$/m.exec((await server.get('/metrics')).body)?.[1]
    try {
      expect([await ready(), await up()]).toEqual([[200, 'ready', null], '1'])
      renameSync(file, `${file}.away`)
      expect([await ready(), await up()]).toEqual([[503, 'busy', '5'], '0'])
      // Another file in its place is not that database.
      writeFileSync(file, '')
      expect(await ready()).toEqual([503, 'busy', '5'])
      renameSync(`${file}.away`, file)
      expect([await ready(), await up()]).toEqual([[200, 'ready', null], '1'])
    } finally {
      await server.close()
    }
  })

  test('reads in the open text format how long each route takes, and no id of anything', async () => {
    const server = await startServer()
    try {
      await server.get('/api/documents/game/breakwater-of-nobody')
      await server.get('/no/such/page')
      const { status, headers, body } = await server.get('/metrics')
      expect(status).toBe(200)
      expect(headers.get('content-type')).toMatch(/^application\/openmetrics-text; version=1\.0\.0/)
      expect(body.trimEnd().endsWith('# EOF')).toBe(true)
      // Each line is a comment, or a name, labels and a number (OpenMetrics 1.0, section 3.1).
      const line =
        /^(# (TYPE|HELP|UNIT|EOF).*|[a-z_][a-z\d_]*(\{[a-zA-Z_]+="[^"]*"(,[a-zA-Z_]+="[^"]*")*\})? ([-+]?[\d.]+(e[-+]?\d+)?|[+-]inf|nan)( [\d.]+)?)$/i
      expect(
        body
          .trimEnd()
          .split('\n')
          .filter((each: string) => !line.test(each)),
      ).toEqual([])
      expect(body).toMatch(/cyclewright_request_seconds_count\{method="GET",route="[^"]*:id[^"]*",status="404"\} 1/)
      expect(body).toMatch(/^cyclewright_database_up 1$/m)
      expect(body).toMatch(/cyclewright_requests_under_way 1/)
      expect(body).not.toMatch(/breakwater-of-nobody|no\/such/)
    } finally {
      await server.close()
    }
  })

  test('needs the token where there is one, and comes from this machine where there is none', async () => {
    const token = 'lighthouse-keepers-only'
    const server = await startServer({ metricsToken: token })
    try {
      const asked = async (authorization?: string) =>
        (await server.get('/metrics', authorization === undefined ? {} : { authorization })).status
      expect([await asked(), await asked('Bearer lighthouse-keepers-onlz'), await asked(`Bearer ${token}`)]).toEqual([
        403, 403, 200,
      ])
    } finally {
      await server.close()
    }
    const open = await startServer()
    try {
      await claim(open)
      expect((await open.get('/metrics')).status).toBe(200)
      expect((await open.get('/metrics', { 'x-forwarded-for': '203.0.113.9' })).status).toBe(403)
    } finally {
      await open.close()
    }
  })
})

test('each answer bears an id that stands in the log, line by line of JSON, and no secret does (ASVS 16.2.4, 16.2.5)', async () => {
  const lines: string[] = []
  const server = await startServer({ logLevel: 'trace', logTo: { write: (line) => void lines.push(line) } })
  try {
    const lead = await claim(server)
    const wrong = await server.send('POST', '/api/session', {
      nickname: 'Ada',
      passphrase: 'not the right lantern',
      device: { name: 'Desk' },
    })
    const id = wrong.headers.get('x-request-id')
    expect(id).toMatch(/^[\da-f]{8}-[\da-f-]{27}$/)
    await lead.get('/api/people')
    const told = lines.map((line) => JSON.parse(line))
    expect(told.filter(({ reqId }) => reqId === id).length).toBeGreaterThan(0)
    const text = lines.join('')
    const secrets = ['not the right lantern', lead.cookie.split('=')[1]!.split(';')[0]!]
    expect(text).not.toContain('seven gulls')
    for (const secret of secrets) expect(text).not.toContain(secret)
  } finally {
    await server.close()
  }
})
