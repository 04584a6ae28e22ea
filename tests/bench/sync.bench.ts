import { mkdtemp, rm } from 'node:fs/promises'
import { Agent, request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { eventId, seen } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { type ServerProcess, startProcess } from '../faults/process.ts'
import type { BenchEntry } from './entry.ts'

interface Burst {
  phones: number
  observations: number
}

interface Taken {
  /** Until all are acknowledged (ms). */
  all: number
  /** Of each request (ms), in order of size. */
  each: number[]
}

const large: Burst = { phones: 200, observations: 100 }
const small: Burst = { phones: 60, observations: 40 }

function post(agent: Agent, url: string, body: string): Promise<{ status: number; text: string }> {
  return new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }
    const sent = request(`${url}/api/records`, { method: 'POST', agent, headers }, (answer) => {
      let text = ''
      answer.setEncoding('utf8')
      answer.on('data', (chunk) => {
        text += chunk
      })
      answer.on('end', () => resolve({ status: answer.statusCode!, text }))
    })
    sent.on('error', reject)
    sent.end(body)
  })
}

/** Every phone sends its batch at once, and again as soon as it is answered, as one whose answer was lost would. */
async function burst(url: string, bodies: readonly string[], observations: number): Promise<Taken> {
  const agent = new Agent({ keepAlive: true, maxSockets: bodies.length })
  const each: number[] = []
  const begin = performance.now()
  await Promise.all(
    bodies.map(async (body) => {
      for (const again of [false, true]) {
        const sent = performance.now()
        const { status, text } = await post(agent, url, body)
        each.push(performance.now() - sent)
        const right = text.split(`"outcome":"held","again":${again}`).length - 1
        if (status !== 200 || right !== observations) throw new Error(`${status}, ${right} held: ${text.slice(0, 300)}`)
      }
    }),
  )
  const all = performance.now() - begin
  agent.destroy()
  return { all, each: each.sort((a, b) => a - b) }
}

let turn = 0

/** Rows that no burst before had. */
function bodiesOf({ phones, observations }: Burst): string[] {
  turn++
  return Array.from({ length: phones }, (_, phone) => {
    const device = turn * 1000 + phone
    const rows = Array.from({ length: observations }, (_, sequence) => seen(device, sequence))
    return JSON.stringify({ device: `phone-${device}`, unsent: 0, rows })
  })
}

/** What a page of the event asks for while all phones come back: its document and its schedule, one after the other. 95th percentile (ms). */
async function pageDuring(url: string, bodies: readonly string[], observations: number): Promise<number> {
  const times: number[] = []
  let going = true
  const reader = async () => {
    while (going) {
      const begin = performance.now()
      for (const path of [`/api/documents/event/${eventId}`, `/api/events/${eventId}/matches`]) {
        const answer = await fetch(url + path)
        if (!answer.ok) throw new Error(`${path}: ${answer.status}`)
        await answer.text()
      }
      times.push(performance.now() - begin)
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
  }
  const reading = reader()
  await burst(url, bodies, observations)
  going = false
  await reading
  return times.sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1]!
}

type Run = (url: string, bodies: readonly string[], observations: number) => Promise<number>

const of =
  (value: (taken: Taken) => number): Run =>
  async (...asked) =>
    value(await burst(...asked))

async function opened(size: Burst, run: Run) {
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-sync-'))
  const server: ServerProcess = await startProcess(join(folder, 'event.db'))
  const close = async () => {
    await server.kill()
    await rm(folder, { recursive: true, force: true })
  }
  try {
    await openEvent(server.url)
    await burst(server.url, bodiesOf(small), small.observations)
  } catch (error) {
    await close()
    throw error
  }
  return { run: () => run(server.url, bodiesOf(size), size.observations), close }
}

const p99 = ({ each }: Taken): number => each[Math.ceil(each.length * 0.99) - 1]!

/** What the server takes in when all phones come back at once. Client and server share this machine. */
const entries: BenchEntry[] = [
  {
    name: 'sync.200x100',
    unit: 'ms',
    better: 'lower',
    open: () =>
      opened(
        large,
        of(({ all }) => all),
      ),
  },
  { name: 'sync.p99', unit: 'ms', better: 'lower', open: () => opened(large, of(p99)) },
  { name: 'sync.p60x40', unit: 'ms', better: 'lower', open: () => opened(small, of(p99)) },
  { name: 'sync.page', unit: 'ms', better: 'lower', open: () => opened(large, pageDuring) },
]

export default entries
