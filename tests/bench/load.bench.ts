import { readFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { event as demo, ownTeam, seededEvent } from '../../seed/event/index.ts'
import type { Row } from '../../src/model/scouting/index.ts'
import { postgresqlDatabase } from '../engines.ts'
import { seen, uuidOf } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type ServerProcess, startProcess } from '../faults/process.ts'
import { bodiesOf, burst, large, percentile } from './burst.ts'
import type { BenchEntry } from './entry.ts'

interface Opened {
  server: ServerProcess
  close(): Promise<void>
}

/** The server with the demo's event and an empty one. */
async function withDemo(): Promise<Opened> {
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-load-'))
  const server = await startProcess(join(folder, 'event.db'), 0, { DEMO: '1' })
  const close = async () => {
    await server.kill()
    await rm(folder, { recursive: true, force: true })
  }
  await openEvent(server.url)
  return { server, close }
}

const { matches, results, records } = seededEvent()
const over = new Set(results.map(({ match }) => match))
const next = matches.find(
  ({ id, red, blue }) => !over.has(id) && [...red, ...blue].some(({ team }) => team === ownTeam),
)!

let device = 10_000

/** What scouts saw of the demo's matches, as if further phones had seen the same; its own event then holds it. */
function demoBodies(): string[] {
  const own = records.filter((row) => row.kind === 'observation' && row.body.match !== null)
  return Array.from({ length: large.phones }, () => {
    device++
    const rows = Array.from({ length: large.observations }, (_, sequence): Row => {
      const row = own[(device * 7 + sequence) % own.length]!
      const id = uuidOf(device, sequence)
      const of = { id, device: `phone-${device}`, sequence, scout: `scout-${device}` }
      return { ...row, ...of, body: { ...row.body, ...of } } as Row
    })
    return JSON.stringify({ device: `phone-${device}`, unsent: 0, rows })
  })
}

const pack = `/api/events/${demo.id}/pack`

/** How long a page's question takes while all phones come back: 95 of 100 answers at most so long (ms). */
async function during(server: ServerProcess, bodies: readonly string[], path: string): Promise<number> {
  const took: number[] = []
  let going = true
  // Four screens, each of which asks again a tenth of a second after its answer.
  const screens = Array.from({ length: 4 }, async () => {
    while (going) {
      const begin = performance.now()
      const answer = await fetch(server.url + path)
      await answer.text()
      if (!answer.ok) throw new Error(`${path}: ${answer.status}`)
      took.push(performance.now() - begin)
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
  })
  await burst(server.url, bodies, large.observations)
  going = false
  await Promise.all(screens)
  return percentile(
    took.sort((a, b) => a - b),
    95,
  )
}

const briefing = `/api/events/${demo.id}/matches/${next.id}/briefing`
/** As screens ask for it. */
const atOnce = `${briefing}?kept=true`

interface Page {
  path: string
  /** What is worked out before the phones come back, as it is before a match. */
  fully?: string
  bodies(): string[]
}

/** On one server, whose other event the records are of. */
const page = (name: string, { path, fully = path, bodies }: Page): BenchEntry => ({
  ...{ name, unit: 'ms', better: 'lower' },
  open: async () => {
    const { server, close } = await withDemo()
    await (await fetch(server.url + fully)).text()
    await burst(server.url, bodiesOf(large), large.observations)
    return { run: () => during(server, bodies(), path), close }
  },
})

/** On a server of its own each time: an event has 20,000 records once, not with each run 20,000 more. */
const ownPage = (name: string, { path, fully = path, bodies }: Page): BenchEntry => ({
  ...{ name, unit: 'ms', better: 'lower', onlyNamed: true },
  open: async () => ({
    run: async () => {
      const { server, close } = await withDemo()
      try {
        await burst(server.url, bodiesOf(large), large.observations)
        await (await fetch(server.url + fully)).text()
        return await during(server, bodies(), path)
      } finally {
        await close()
      }
    },
  }),
})

/** Records of 200 phones, by one server process or by two at one database (rows a second). */
const two: BenchEntry = {
  ...{ name: 'load.two', unit: 'rows/s', better: 'higher', onlyNamed: true },
  open: async () => {
    const database = await postgresqlDatabase()
    const servers = [await startProcess(database.url), await startProcess(database.url)] as const
    await openEvent(servers[0].url)
    const rate = async (by: readonly ServerProcess[]) => {
      const bodies = bodiesOf(large)
      const begin = performance.now()
      await Promise.all(
        by.map(({ url }, index) => {
          const own = bodies.filter((_, phone) => phone % by.length === index)
          return burst(url, own, large.observations)
        }),
      )
      return (large.phones * large.observations * 1000) / (performance.now() - begin)
    }
    await rate(servers)
    return {
      run: () => rate(servers),
      baseline: { what: 'one process', run: () => rate(servers.slice(0, 1)) },
      close: async () => {
        for (const server of servers) await server.kill()
        await database.remove()
      },
    }
  },
}

const megabytes = ({ child }: ServerProcess): number =>
  (Number(/^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))![1]) * 1024) / 1e6

const minute = 60_000

/** What an event's afternoon is made of, all minute long: phones that send, some of it again, screens that ask, and streams that come and go. */
async function minuteOf(server: ServerProcess, phone: () => number): Promise<void> {
  const until = performance.now() + minute
  /** A kept connection may be closed in the moment in which it is used, as after a stop of both processes: browsers ask anew, too. */
  const again = (error: Error) => {
    if ((error.cause as { code?: string } | undefined)?.code !== 'ECONNRESET') throw error
    console.error('a kept connection was closed')
  }
  const loop = async (pause: number, work: () => Promise<unknown>) => {
    while (performance.now() < until) {
      await work().catch(again)
      await new Promise((resolve) => setTimeout(resolve, pause))
    }
  }
  /** Whatever is not answered as it should be ends the measurement. */
  const good = async (answer: Response) => {
    const text = await answer.text()
    if (!answer.ok) throw new Error(`${answer.url}: ${answer.status} ${text.slice(0, 200)}`)
  }
  const ask = (path: string) => async () => good(await fetch(server.url + path))
  const headers = { 'content-type': 'application/json' }
  const send = (of: number) => {
    const rows = Array.from({ length: 5 }, (_, sequence) => seen(of, sequence))
    const body = JSON.stringify({ device: `phone-${of}`, unsent: 0, rows })
    return fetch(`${server.url}/api/records`, { method: 'POST', headers, body }).then(good)
  }
  const listen = async () => {
    const stop = new AbortController()
    const answer = await fetch(`${server.url}/api/events/open-water/live`, { signal: stop.signal })
    if (!answer.ok) throw new Error(`${answer.url}: ${answer.status}`)
    setTimeout(() => stop.abort(), 500)
    await answer.text().catch(() => {})
  }
  await Promise.all([
    loop(1000, () => send(phone())),
    loop(300, () => send(90_000 + (Math.floor(performance.now()) % 20))),
    ...['board', 'matches', 'ranking'].map((what) => loop(200, ask(`/api/events/${demo.id}/${what}`))),
    loop(500, ask(atOnce)),
    loop(200, listen),
    loop(200, ask('/api/session')),
  ])
}

/** By how much the server's memory has grown in each minute of use since the first, which is not counted (MB): what collecting it leaves swings by 100. */
const soak: BenchEntry = {
  ...{
    name: 'load.soak',
    unit: 'MB/min',
    better: 'lower',
    onlyNamed: true,
    runs: Number(process.env.SOAK_MINUTES ?? 5),
  },
  open: async () => {
    const { server, close } = await withDemo()
    let phone = 50_000
    await minuteOf(server, () => phone++)
    const first = megabytes(server)
    let minutes = 0
    const run = async () => {
      await minuteOf(server, () => phone++)
      const now = megabytes(server)
      console.error(`${now.toFixed(1)} MB`)
      minutes += 1
      return (now - first) / minutes
    }
    return { run, close }
  },
}

const ofOther = () => bodiesOf(large)

const entries: BenchEntry[] = [
  // The schedule of the event that the records are of.
  page('load.page', { path: '/api/events/open-water/matches', bodies: ofOther }),
  // The briefing of a match of another event of this server.
  page('load.briefing', { path: atOnce, fully: briefing, bodies: ofOther }),
  // Of the same event, and the pack that its page opens with: what is known is another after each commit.
  ownPage('load.renewed', { path: atOnce, fully: briefing, bodies: demoBodies }),
  ownPage('load.pack', { path: `${pack}?kept=true`, fully: pack, bodies: demoBodies }),
  // For whoever wants the same from all records, and waits.
  ownPage('load.exact', { path: briefing, bodies: demoBodies }),
  two,
  soak,
]

export default entries
