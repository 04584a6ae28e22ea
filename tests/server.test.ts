import { type ChildProcessWithoutNullStreams, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { copyFileSync } from 'node:fs'
import { connect, createServer } from 'node:net'
import { join } from 'node:path'
import { connect as connectTls } from 'node:tls'
import { beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { seedDocuments } from '../seed/index.ts'
import { projectRoot } from '../src/root.ts'
import { openStore } from '../src/store/index.ts'
import { scratchFolder } from './store/scratch.ts'

// The server as its users run it, from the sources as they are now.
beforeAll(() => {
  const { status, stderr } = spawnSync(process.execPath, ['scripts/bundle.js'], {
    cwd: projectRoot(),
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(stderr)
})

interface Started {
  child: ChildProcessWithoutNullStreams
  /** What was printed so far. */
  output(): string
  /** Resolves with the exit code. */
  ended: Promise<number | null>
}

function start(settings: { [name: string]: string }): Started {
  const child = spawn(process.execPath, ['dist/server.js'], {
    cwd: projectRoot(),
    env: { ...process.env, HOST: '127.0.0.1', PORT: '0', LOG_LEVEL: 'silent', ...settings },
  })
  let printed = ''
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => {
      printed += chunk
    })
  onTestFinished(() => void child.kill('SIGKILL'))
  return { child, output: () => printed, ended: once(child, 'close').then(([code]) => code) }
}

const lastLine = (text: string) => text.trimEnd().split('\n').at(-1)!

/** Waits for the address, which must be what was printed last. */
async function address({ child, output }: Started): Promise<string> {
  while (!/^http/m.test(output())) {
    if (child.exitCode !== null) throw new Error(output())
    await Promise.race([once(child.stdout, 'data'), once(child, 'close')])
  }
  return lastLine(output())
}

async function stop({ child, ended }: Started) {
  child.kill('SIGTERM')
  return ended
}

const databaseIn = (folder: string) => `file:${join(folder, 'team.db')}`

async function documentsIn(url: string): Promise<string[]> {
  const store = await openStore(url)
  const team = store.workspace(await store.ensureWorkspace('default'))
  const kinds = [
    'game',
    'design',
    'option',
    'comparison',
    'decision',
    'quickSheet',
    'reading',
    'timing',
    'part',
    'event',
  ] as const
  const lists = await Promise.all(kinds.map((kind) => team.list(kind)))
  await store.close()
  return lists.flat().map(({ kind, id, revision }) => `${kind} ${id} ${revision}`)
}

test('the last line is the address, behind it are health and the demo season, and a gentle stop ends with 0', async () => {
  const url = databaseIn(scratchFolder())
  const first = start({ DATABASE_URL: url })
  const health = await fetch(`${await address(first)}/health`)
  expect([health.status, await health.json()]).toEqual([
    200,
    { status: 'ok', version: '0.1.0', database: { engine: 'sqlite', journalMode: 'wal', synchronous: 'FULL' } },
  ])
  expect(await stop(first)).toBe(0)
  const season = seedDocuments().map(({ kind, id }) => `${kind} ${id} 1`)
  expect((await documentsIn(url)).sort()).toEqual(season.sort())

  const second = start({ DATABASE_URL: url })
  expect(await address(second)).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/)
  expect(second.output()).not.toMatch(/demo season/)
  await stop(second)
  expect((await documentsIn(url)).length).toBe(season.length)
})

test('a server that belongs to nobody listens on this machine only, whatever HOST says, until its link is used', async () => {
  const folder = scratchFolder()
  const settings = { DATABASE_URL: databaseIn(folder), DEMO: '0', HOST: '0.0.0.0' }
  const first = start(settings)
  const url = await address(first)
  const { port } = new URL(url)
  expect(url).toBe(`http://127.0.0.1:${port}`)
  // Any other address of this machine; the whole of 127.0.0.0/8 is this machine.
  const elsewhere = `http://127.0.0.2:${port}`
  await expect(fetch(`${elsewhere}/health`)).rejects.toThrow()
  const link = new URL(/^ {2}(http\S+)$/m.exec(first.output())?.[1] ?? '')
  expect([link.origin, link.pathname]).toEqual([url, '/claim'])
  const token = link.hash.slice(1)
  expect(token.length).toBe(43)
  const claiming = await fetch(`${url}/api/session/claim`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ token, nickname: 'Ada', passphrase: 'seven gulls above', device: { name: 'Laptop' } }),
  })
  expect(claiming.status).toBe(200)
  const cookie = claiming.headers.getSetCookie()[0]?.split(';')[0] ?? ''
  await expect.poll(() => fetch(`${elsewhere}/health`).then(({ status }) => status, String)).toBe(200)
  const people = (headers?: HeadersInit) => fetch(`${elsewhere}/api/people`, { headers }).then(({ status }) => status)
  expect([await people(), await people({ cookie })]).toEqual([401, 200])
  expect(await stop(first)).toBe(0)

  const second = start(settings)
  expect(await address(second)).toMatch(/^http:\/\/localhost:\d+$/)
  expect(second.output()).not.toMatch(/claim/)
  await stop(second)
})

test('a request that never ends does not keep the server from stopping', async () => {
  const server = start({ DATABASE_URL: databaseIn(scratchFolder()), DEMO: '0' })
  const { port } = new URL(await address(server))
  const socket = connect(Number(port), '127.0.0.1')
  onTestFinished(() => void socket.destroy())
  socket.on('error', () => {})
  socket.write(
    'POST /api/compute/travel HTTP/1.1\r\nHost: a\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{',
  )
  await new Promise((resolve) => setTimeout(resolve, 200))
  expect(await stop(server)).toBe(0)
})

test('speaks https with the certificate and key that are named, and reads them anew on SIGHUP', async () => {
  const folder = scratchFolder()
  const [TLS_CERT, TLS_KEY] = [join(folder, 'certificate.pem'), join(folder, 'key.pem')]
  const pem = (name: string) => join(projectRoot(), 'tests', 'api', 'tls', `${name}.pem`)
  const put = (certificate: string, key: string) => {
    copyFileSync(pem(certificate), TLS_CERT)
    copyFileSync(pem(key), TLS_KEY)
  }
  put('certificate', 'key')
  const server = start({ DATABASE_URL: databaseIn(folder), DEMO: '0', TLS_CERT, TLS_KEY })
  const url = await address(server)
  expect(url).toMatch(/^https:\/\/127\.0\.0\.1:\d+$/)
  const shown = () =>
    new Promise<unknown>((resolve, reject) => {
      // Signed by nobody: which one it is, is what is asked here.
      const socket = connectTls(
        { port: Number(new URL(url).port), host: '127.0.0.1', rejectUnauthorized: false },
        () => {
          resolve(socket.getPeerCertificate().subject.CN)
          socket.destroy()
        },
      )
      socket.once('error', reject)
    })
  expect(await shown()).toBe('localhost')
  put('later-certificate', 'key')
  server.child.kill('SIGHUP')
  await expect
    .poll(server.output)
    .toMatch(/stays as it was: TLS_CERT and TLS_KEY must be a certificate and its own key/)
  expect(await shown()).toBe('localhost')
  put('later-certificate', 'later-key')
  server.child.kill('SIGHUP')
  await expect.poll(shown).toBe('later')
  expect(await stop(server)).toBe(0)
})

test('with DEMO=0 the database stays empty', async () => {
  const url = databaseIn(scratchFolder())
  const server = start({ DATABASE_URL: url, DEMO: '0' })
  await address(server)
  await stop(server)
  expect(await documentsIn(url)).toEqual([])
})

describe('a start that can not go on ends with 1 and one sentence', () => {
  async function sentence(settings: { [name: string]: string }) {
    const server = start({ DATABASE_URL: databaseIn(scratchFolder()), DEMO: '0', ...settings })
    return [await server.ended, lastLine(server.output())]
  }

  test('where a setting is wrong', async () => {
    expect(await sentence({ PORT: 'web' })).toEqual([1, 'PORT must be a whole number from 0 to 65535, got "web".'])
  })

  test('where the port is taken', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    await once(other, 'listening')
    onTestFinished(() => void other.close())
    const { port } = other.address() as { port: number }
    expect(await sentence({ PORT: String(port) })).toEqual([
      1,
      `Port ${port} is taken by another program. Name another: PORT=3001 npm start`,
    ])
  })

  test('where the database is not one', async () => {
    const file = join(projectRoot(), 'package.json')
    expect(await sentence({ DATABASE_URL: `file:${file}` })).toEqual([
      1,
      `${file} is not a database, or is damaged. Name another in DATABASE_URL.`,
    ])
  })
})
