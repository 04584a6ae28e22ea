import { readFileSync } from 'node:fs'
import { Agent, request } from 'node:http'
import { type ServerProcess, startProcess } from '../faults/process.ts'
import type { BenchEntry } from './entry.ts'
import { eventOf, rowsOf, wholeSeason } from './growth/season.ts'
import { type Filled, filled } from './growth/worlds.ts'

interface World extends Filled {
  server: ServerProcess
  /** Counts what was asked, so that the workspaces take turns. */
  asked: number
}

const worlds = new Map<number, Promise<World>>()

/** The server with so many workspaces, opened once for all entries. */
function worldOf(workspaces: number): Promise<World> {
  const known = worlds.get(workspaces)
  if (known) return known
  const made = (async () => {
    const all = await filled(workspaces, wholeSeason)
    const server = await startProcess(all.database.file || all.database.url, 0, {
      // A copy of everything would be made meanwhile, by a thread whose time is no question's.
      BACKUP_HOURS: '0',
    })
    return { ...all, server, asked: 0 }
  })()
  worlds.set(workspaces, made)
  return made
}

interface Asked {
  method?: 'GET' | 'POST'
  path: string
  body?: unknown
  /** What stands in an answer that is worth its time. */
  holds: string
  /** Number of the person whose phone asks; else the lead. */
  person?: number
}

function ask(
  url: string,
  { agent, cookie }: { agent: Agent; cookie: string },
  { method = 'GET', path, body, holds }: Asked,
): Promise<number> {
  const text = body === undefined ? undefined : JSON.stringify(body)
  const content =
    text === undefined ? {} : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(text) }
  return new Promise((resolve, reject) => {
    const begin = performance.now()
    const sent = request(`${url}${path}`, { method, agent, headers: { cookie, ...content } }, (answer) => {
      let said = ''
      answer.setEncoding('utf8').on('data', (part: string) => {
        said += part
      })
      answer.on('end', () => {
        const took = performance.now() - begin
        if (answer.statusCode === 200 && said.includes(holds)) resolve(took)
        else reject(new Error(`${method} ${path}: ${answer.statusCode} without ${holds}: ${said.slice(0, 200)}`))
      })
    })
    sent.on('error', reject)
    sent.end(text)
  })
}

/** The event that every team is at, its last one. */
const event = eventOf(wholeSeason.events)
const at = (what: string) => `/api/events/${event}/${what}`

let phone = 500_000

/** Rows belong to whoever recorded them, and a single phone may not send all of them so soon. */
const batch = (of: number, place: number, again: boolean): Asked => {
  const rows = rowsOf(event, { phone: of, place }, { ...wholeSeason, matches: 6 })
  const body = { device: `phone-${of}`, unsent: 0, rows }
  const holds = again ? '"again":true' : '"again":false'
  return { method: 'POST', path: '/api/records', body, holds, person: 1 + (of % 20) }
}

const sentAgain = wholeSeason.events * 100

/** What is asked at an event: by phones, by screens, by leads. */
const questions: { [name: string]: (world: World) => Asked } = {
  session: () => ({ path: '/api/session', holds: '"role":"lead"' }),
  documents: () => ({ path: '/api/documents/option', holds: 'option-20' }),
  schedule: () => ({ path: at('matches'), holds: '"q100"' }),
  results: () => ({ path: at('results'), holds: '"q100"' }),
  ranking: () => ({ path: at('ranking'), holds: '90060' }),
  records: () => ({ path: `/api/records?event=${event}`, holds: `phone-${sentAgain + 5}` }),
  // The first workspace's records came before those of all others.
  later: ({ cookies, asked }) => {
    const isFirst = asked % cookies.length === 1 % cookies.length
    const after = isFirst ? 3594 : 3600 + 3594 * (cookies.length - 1)
    return { path: `/api/records?event=${event}&limit=6&after=${after}`, holds: 'phone-' }
  },
  board: () => ({ path: at('board'), holds: '"q100"' }),
  match: () => ({ path: at('observations?match=q7'), holds: '"pier"' }),
  estimates: () => ({ path: at('estimates'), holds: '90060' }),
  forecasts: () => ({ path: at('forecasts'), holds: '"q100"' }),
  selection: () => ({ path: at('selection'), holds: 'Reason 23' }),
  audit: () => ({ path: '/api/audit', holds: 'event.results.enter' }),
  people: () => ({ path: '/api/devices', holds: 'Somebody 20' }),
  stands: () => ({ path: `/api/stands/${event}`, holds: '"q100"' }),
  taken: () => batch(phone++, 0, false),
  again: ({ asked }) => batch(sentAgain + (asked % 6), asked % 6, true),
}

const requests = 100

function askOne(world: World, agent: Agent, question: (world: World) => Asked): Promise<number> {
  const turn = world.asked++
  const which = turn % world.cookies.length
  const asked = question(world)
  const { person = 1 } = asked
  const cookie = person === 1 ? world.cookies[which]! : world.phones[which]![person - 2]!
  return ask(world.server.url, { agent, cookie }, asked)
}

/**
 * The slowest but five of a hundred requests with so many workspaces, by each in turn, and with one (ms). One request here, one there, so that a busy
 * machine disturbs both alike.
 */
async function slowest(workspaces: number, question: (world: World) => Asked): Promise<{ many: number; one: number }> {
  const worlds = [await worldOf(workspaces), await worldOf(1)] as const
  const agents = worlds.map(() => new Agent({ keepAlive: true }))
  const took = worlds.map((): number[] => [])
  for (let k = 0; k < requests; k++)
    for (const which of [k % 2, 1 - (k % 2)]) took[which]!.push(await askOne(worlds[which]!, agents[which]!, question))
  for (const agent of agents) agent.destroy()
  const [many, one] = took.map((all) => all.sort((a, b) => a - b)[Math.ceil(requests * 0.95) - 1]!)
  return { many: many!, one: one! }
}

/** The server's processor time for a request, on average (ms): the same on a busy machine. */
async function processorFor(workspaces: number, question: (world: World) => Asked): Promise<number> {
  const world = await worldOf(workspaces)
  const agent = new Agent({ keepAlive: true })
  const before = processorOf(world.server)
  for (let k = 0; k < requests; k++) await askOne(world, agent, question)
  agent.destroy()
  return (processorOf(world.server) - before) / requests
}

/** Of all its threads (ms), in the kernel's hundredths of a second. */
function processorOf({ child }: ServerProcess): number {
  const fields = readFileSync(`/proc/${child.pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ')
  return (Number(fields[11]) + Number(fields[12])) * 10
}

const megabytes = async (workspaces: number): Promise<number> => {
  const { pid } = (await worldOf(workspaces)).server.child
  return (Number(/^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))![1]) * 1024) / 1e6
}

const common = { better: 'lower', runs: 5, onlyNamed: true } as const
const sizes = [10, 30, 100]

/** Each as it is with many workspaces, against what it is with one. */
const entry = (name: string, unit: string, of: (workspaces: number) => Promise<number>): BenchEntry[] =>
  sizes.map((workspaces) => ({
    ...common,
    ...{ name: `growth.${name}${workspaces}`, unit },
    open: async () => {
      // Once each before it counts, so that what is worked out once is there in both.
      for (const each of [1, workspaces]) if (unit === 'ms') await of(each)
      return { run: () => of(workspaces), baseline: { what: 'with 1', run: () => of(1) } }
    },
  }))

const entryOfSlowest = (name: string, question: (world: World) => Asked): BenchEntry[] =>
  sizes.map((workspaces) => ({
    ...common,
    ...{ name: `growth.${name}${workspaces}`, unit: 'ms' },
    open: async () => {
      await slowest(workspaces, question)
      let last = 0
      const run = async () => {
        const { many, one } = await slowest(workspaces, question)
        last = one
        return many
      }
      return { run, baseline: { what: 'with 1', run: async () => last } }
    },
  }))

/** When all entries were measured. */
export async function close(): Promise<void> {
  for (const world of worlds.values()) {
    const { server, database } = await world
    await server.kill()
    await database.remove()
  }
  worlds.clear()
}

const entries: BenchEntry[] = [
  ...Object.entries(questions).flatMap(([name, question]) => entryOfSlowest(name, question)),
  ...Object.entries(questions).flatMap(([name, question]) =>
    entry(`${name}cpu`, 'ms', (workspaces) => processorFor(workspaces, question)),
  ),
  ...entry('bytes', 'MB', async (workspaces) => (await worldOf(workspaces)).bytes / 1e6),
  ...entry('memory', 'MB', megabytes),
]

export default entries
