import Dexie from 'dexie'
import { IDBKeyRange, indexedDB } from 'fake-indexeddb'
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest'
import { uuid } from '../../../src/api/contracts/scouting/index.ts'
import type { Row, RowAnswer } from '../../../src/model/scouting/types.ts'
import { cap, pauseAfter, retryAfter } from '../../../web/stands/data/backoff.ts'
import { openDatabase, recall, type StandsDatabase } from '../../../web/stands/data/database.ts'
import { madeId } from '../../../web/stands/data/ids.ts'
import { addRow, countsIn, saveDraft } from '../../../web/stands/data/outbox.ts'
import { type Locks, startSender } from '../../../web/stands/data/sender.ts'
import type { Session } from '../../../web/stands/data/shapes.ts'
import { freshDraft } from '../../../web/stands/record/draft.ts'

// Node has no database of a browser's kind; files of one worker share Dexie.
const before = { ...Dexie.dependencies }
Object.assign(Dexie.dependencies, { indexedDB, IDBKeyRange })
afterAll(() => Object.assign(Dexie.dependencies, before))

let database: StandsDatabase
let made = 0
beforeEach(async () => {
  database = openDatabase(`stands-${made++}`)
  await database.open()
})
afterEach(() => database.delete())

const keep = (scout = 'mia', device = 'phone-a') =>
  addRow(database, device, (sequence): Row => {
    const common = { id: madeId(), event: 'spring', device, sequence, scout, made: '2026-11-27T10:00:00Z' }
    return { ...common, kind: 'drill', body: { drill: 'd1' } }
  })

const person = (id: string): Session => ({
  claimed: true,
  person: { id, nickname: id, role: 'scout' },
  device: { id: 'phone-a', name: 'Phone' },
})
const json = (body: unknown, status = 200, headers = {}) => new Response(JSON.stringify(body), { status, headers })

/** A server in this process, with the answers of the real one unless a test puts others in their place. */
class Fake {
  session: Session = person('mia')
  held = new Set<string>()
  posts: Row[][] = []
  unsent: number[] = []
  next: (() => Response)[] = []
  ask = async (path: RequestInfo | URL, init?: RequestInit): Promise<Response> => {
    if (path === '/api/session') return json(this.session)
    const { rows, unsent } = JSON.parse(String(init?.body)) as { rows: Row[]; unsent: number }
    this.posts.push(rows)
    this.unsent.push(unsent)
    const other = this.next.shift()
    if (other) return other()
    const answers: RowAnswer[] = rows.map(({ id }) => ({ id, outcome: 'held', again: this.held.has(id) }))
    for (const { id } of rows) this.held.add(id)
    return json({ answers, receipt: { held: this.held.size, quarantined: 0, at: '2026-11-27T14:03:00Z' } })
  }
}

function sending(server: Fake, { locks, now = () => Date.now() }: { locks?: Locks; now?: () => number } = {}) {
  return startSender({ database, ask: server.ask as typeof fetch, now, app: 'test', random: () => 0.5, locks })
}

/** One try and what came of it. */
async function oneTry(server: Fake) {
  const sender = sending(server)
  sender.wake()
  await sender.settled()
  const state = sender.now()
  sender.stop()
  return state
}

const states = async () => (await database.outbox.orderBy('[device+sequence]').toArray()).map(({ state }) => state)

describe('the outbox', () => {
  test('counts the rows of a device, and keeps a row once', async () => {
    const [first, second, other] = [await keep(), await keep(), await keep('mia', 'phone-b')]
    expect([first, second, other].map(({ sequence }) => sequence)).toEqual([1, 2, 1])
    await addRow(database, 'phone-a', () => second.row)
    expect(await database.outbox.count()).toBe(3)
  })

  test('takes a finished draft and its taps at once', async () => {
    const about = { match: 'q1', seat: null, team: '90001', identifiedBy: 'number', subject: 'robot' } as const
    const draft = freshDraft({
      id: madeId(),
      event: 'spring',
      scout: 'mia',
      game: { id: 'breakwater', revision: 1 },
      about: { ...about, origin: 'live', mode: 'timeline' },
      begun: 0,
    })
    await database.drafts.add(draft)
    await database.taps.add({ what: 'scored', goal: 'piers', elapsed: 4, draft: draft.id, order: 1 })
    await database.taps.add({ what: 'collected', source: 'outer', elapsed: 2, draft: draft.id, order: 0 })
    const kept = await saveDraft(database, draft, { device: 'phone-a', now: 0 })
    expect(kept.row).toMatchObject({ kind: 'observation', sequence: 1, body: { game: 1 } })
    expect(kept.row.kind === 'observation' && kept.row.body.timeline?.map(({ what }) => what)).toEqual([
      'collected',
      'scored',
    ])
    expect((await database.drafts.get(draft.id))?.step).toBe('saved')
    // Pressed twice, it is one record.
    await saveDraft(database, draft, { device: 'phone-a', now: 0 })
    expect(await database.outbox.count()).toBe(1)
  })

  test('of the first tables comes through into those of today, and of later ones back', async () => {
    const name = `older-${made}`
    // As they were on 27 November 2026; never to be edited.
    const first = {
      outbox: 'id, event, state, [device+sequence]',
      drafts: 'id, event, step',
      taps: '[draft+order], draft',
      packs: 'event',
      games: '[id+revision]',
      memory: 'key',
    }
    const older = new Dexie(name)
    older.version(1).stores(first)
    const row = { id: madeId(), event: 'spring', device: 'a', sequence: 1, scout: 'mia', state: 'phone', row: {} }
    await older.table('outbox').add(row)
    await older.table('taps').add({ draft: 'd', order: 0, what: 'scored', elapsed: 1 })
    older.close()
    const today = openDatabase(name)
    expect(await today.outbox.toArray()).toEqual([row])
    expect(await today.taps.count()).toBe(1)
    today.close()

    // A table more, as some later version will have it; then a server that was put back, with the page of today.
    const later = new Dexie(name)
    later.version(1).stores(first)
    later.version(2).stores({ laterOn: 'id' })
    await later.open()
    later.close()
    const back = openDatabase(name)
    expect(await back.outbox.toArray()).toEqual([row])
    await back.outbox.update(row.id, { state: 'server' })
    await back.delete()
  })

  test('names its rows as RFC 9562 has it: time first, version 7', () => {
    // The RFC's own example of version 7 (appendix A.6, written down from memory): 2022-02-22 14:22:22.00 −05:00.
    const random = Uint8Array.from([0, 0, 0, 0, 0, 0, 0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f])
    const id = madeId(0x017f22e279b0, (bytes) => {
      bytes.set(random)
      return bytes
    })
    expect(id).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f')
    expect(uuid.parse(madeId())).toMatch(/^[\da-f]{8}-[\da-f]{4}-7/)
  })
})

describe('the sender', () => {
  test('marks a row as on the server by the server’s own answer about it, and by nothing else', async () => {
    await keep()
    const server = new Fake()
    const portal = () => new Response('<html>Please sign in</html>', { headers: { 'content-type': 'text/html' } })
    const other = () =>
      json({
        answers: [{ id: 'other', outcome: 'held', again: false }],
        receipt: { held: 1, quarantined: 0, at: '2026-11-27T14:03:00Z' },
      })
    const misshapen = [portal, () => json({ ok: true }), () => json([]), other, () => json({ error: 'x' }, 500)]
    for (const answer of misshapen) {
      server.next = [answer]
      expect(await oneTry(server)).toMatchObject({ doing: 'waiting', why: 'noServer' })
      expect(await states()).toEqual(['phone'])
    }
    expect(await oneTry(server)).toEqual({ doing: 'idle' })
    expect(await states()).toEqual(['server'])
    expect(await recall(database, 'receipt')).toEqual({
      held: 1,
      quarantined: 0,
      at: '2026-11-27T14:03:00Z',
      device: 'phone-a',
    })
    // What is held stays here, and is not sent again.
    await oneTry(server)
    expect(server.posts).toHaveLength(misshapen.length + 1)
  })

  test('never sends under another person’s name', async () => {
    await keep('mia')
    await keep('ben')
    const server = new Fake()
    await oneTry(server)
    expect(server.posts.flat().map(({ scout }) => scout)).toEqual(['mia'])
    const rows = await database.outbox.toArray()
    expect(countsIn(rows, server.session)).toEqual({ phone: 0, attention: 1, server: 1 })
    server.session = person('ben')
    await oneTry(server)
    expect(server.posts.flat().map(({ scout }) => scout)).toEqual(['mia', 'ben'])
    expect(await states()).toEqual(['server', 'server'])
  })

  test('stops where nobody is signed in, and keeps everything', async () => {
    await keep()
    const server = new Fake()
    server.next = [() => json({ error: { code: 'unauthenticated', message: 'Sign in' } }, 401)]
    expect(await oneTry(server)).toEqual({ doing: 'stopped', why: 'signIn' })
    server.session = { claimed: true, person: null, device: null }
    expect(await oneTry(server)).toEqual({ doing: 'stopped', why: 'signIn' })
    expect(await states()).toEqual(['phone'])
    expect(server.posts).toHaveLength(1)
  })

  test('says which rows a lead has to decide on, and lets one that can not be read not hold up the others', async () => {
    const [first, second, third] = [await keep(), await keep(), await keep()]
    const server = new Fake()
    const malformed = () => json({ error: { code: 'malformed', message: 'rows[1] is not what it should be' } }, 400)
    // All three, then the first alone, then the other two, of which the second alone is refused.
    server.next = [malformed]
    const held = server.ask
    server.ask = async (path, init) => {
      const rows = path === '/api/session' ? [] : (JSON.parse(String(init?.body)) as { rows: Row[] }).rows
      return rows.some(({ id }) => id === second.id) ? malformed() : held(path, init)
    }
    server.next = []
    expect(await oneTry(server)).toEqual({ doing: 'idle' })
    expect(await states()).toEqual(['server', 'attention', 'server'])
    expect((await database.outbox.get(second.id))?.why).toBe('rows[1] is not what it should be')
    expect(server.held).toEqual(new Set([first.id, third.id]))
  })

  test('takes the time that the server asks for', async () => {
    await keep()
    const server = new Fake()
    server.next = [() => json({}, 503, { 'retry-after': '30' })]
    const before = Date.now()
    const state = await oneTry(server)
    expect(state).toMatchObject({ doing: 'waiting', why: 'busy' })
    expect('until' in state && state.until - before).toBeGreaterThanOrEqual(30_000)
  })

  test('tries again at a tap, but not at each of them', async () => {
    await keep()
    const server = new Fake()
    const gone = () => new Response('', { status: 502 })
    server.next = [gone, gone]
    let now = 0
    const sender = sending(server, { now: () => now })
    const nudged = async () => {
      sender.nudge()
      await sender.settled()
      return server.posts.length
    }
    // Nothing waits: a tap is no reason.
    expect(await nudged()).toBe(0)
    sender.wake()
    await sender.settled()
    now = 4999
    expect(await nudged()).toBe(1)
    now = 5000
    expect(await nudged()).toBe(2)
    now = 9999
    expect(await nudged()).toBe(2)
    now = 10_000
    expect(await nudged()).toBe(3)
    expect(sender.now()).toEqual({ doing: 'idle' })
    sender.stop()
  })

  test('sends at most 200 rows at once, in their order, and says how many are still here', async () => {
    await Promise.all(Array.from({ length: 230 }, () => keep()))
    const server = new Fake()
    await oneTry(server)
    expect(server.posts.map((rows) => rows.length)).toEqual([200, 30])
    expect(server.unsent).toEqual([30, 0])
    expect(server.posts.flat().map(({ sequence }) => sequence)).toEqual(
      Array.from({ length: 230 }, (_, index) => index + 1),
    )
  })

  test('in two tabs sends each row once', async () => {
    await Promise.all(Array.from({ length: 20 }, () => keep()))
    const server = new Fake()
    // As the browser's own: whoever comes while it is held is told so.
    let taken = false
    const locks: Locks = {
      request: async (_, __, held) => {
        if (taken) return held(null)
        taken = true
        try {
          return await held({})
        } finally {
          taken = false
        }
      },
    }
    const tabs = [sending(server, { locks }), sending(server, { locks })]
    for (const tab of tabs) tab.wake()
    await Promise.all(tabs.map((tab) => tab.settled()))
    for (const tab of tabs) tab.stop()
    expect(server.posts.flat()).toHaveLength(20)
    expect(new Set(await states())).toEqual(new Set(['server']))
  })

  test('waits longer after each failure, up to a minute, and not all phones alike', () => {
    expect([1, 2, 3, 7, 30].map((failed) => pauseAfter(failed, () => 1))).toEqual([1000, 2000, 4000, cap, cap])
    expect(pauseAfter(7, () => 0)).toBe(cap / 2)
    expect(retryAfter('7', 0)).toBe(7000)
    expect(retryAfter('Fri, 27 Nov 2026 10:00:30 GMT', Date.parse('2026-11-27T10:00:00Z'))).toBe(30_000)
    expect([retryAfter(null, 0), retryAfter('soon', 0)]).toEqual([null, null])
  })
})
