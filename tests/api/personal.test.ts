import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join as pathOf } from 'node:path'
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest'
import { seedDocuments } from '../../seed/index.ts'
import { hashed } from '../../src/api/records/rows.ts'
import type { DecisionRecord } from '../../src/model/documents/records.ts'
import type { Row } from '../../src/model/scouting/index.ts'
import { projectRoot } from '../../src/root.ts'
import { inLongForm } from '../browser/longForm.ts'
import { onPostgresql } from '../engines.ts'
import { eventId, seen, teams } from '../faults/harbourEvent.ts'
import { type Rich, richEvent } from './richEvent.ts'
import { type Server, startServer } from './server.ts'
import { claim, join, type Member } from './team.ts'

const nickname = 'Bo of the stands'

let server: Server
let rich: Rich
let other: Member
/** A record whose driver was typed in. */
let drive: Row
let before: { archive: unknown; rows: Row[] }

const allRows = async (): Promise<string> => {
  const { tables, sql } = server.database
  const names = new Set([...(await tables('workspaceId')), 'Workspace'])
  return JSON.stringify(await Promise.all([...names].map((table) => sql(`SELECT * FROM "${table}"`))))
}
const records = async (): Promise<Row[]> =>
  (await rich.lead.get(`/api/records?event=${eventId}`)).body.records.map(({ row }: { row: Row }) => row)

beforeAll(async () => {
  server = await startServer({ pool: { threads: 1 } })
  rich = await richEvent(server)
  const { lead, scout } = rich
  other = await join(server, lead, { role: 'scout', nickname: 'Kit' })
  const ok = async (answer: Promise<{ status: number; body: unknown }>) => {
    const { status, body } = await answer
    if (status !== 200) throw new Error(JSON.stringify(body))
  }
  await ok(lead.send('PUT', `/api/devices/${scout.device}/name`, { name: 'Bo’s own phone' }))
  const run = { match: null, origin: 'practice', driver: 'bo of the Stands', team: teams[0]!, game: 2 } as const
  drive = seen(2, 900, { ...run, scout: other.id })
  const { body } = await other.send('POST', '/api/records', { device: 'phone-2', unsent: 0, rows: [drive] })
  expect(body.answers).toEqual([expect.objectContaining({ outcome: 'held' })])
  const seeded = seedDocuments().find(({ kind }) => kind === 'decision')!.body as DecisionRecord
  const agreed = [
    { who: 'BO of the stands', on: '2031-02-01' },
    { who: 'Kit', on: '2031-02-01' },
  ]
  const set = [
    { id: 'a', kind: 'points', reason: 'Seen', who: 'Bo Of The Stands', on: '2031-02-01', option: 'x', points: 3 },
    { id: 'b', kind: 'points', reason: 'Seen', who: 'Kit', on: '2031-02-01', option: 'x', points: 4 },
  ]
  const snapshot = { ...seeded.snapshot, overrides: set.map((each) => ({ ...each, computed: 2 })) }
  const decision = { ...seeded, id: 'davit', agreed, snapshot }
  const workspace = server.store.workspace(await server.store.ensureWorkspace('default'))
  await workspace.save({ kind: 'decision', id: 'davit', name: decision.name, body: decision, base: null })
  const compared = seedDocuments().find(({ kind }) => kind === 'comparison')!
  const comparison = { ...(compared.body as object), id: 'slips', overrides: set }
  await workspace.save({ kind: 'comparison', id: 'slips', name: 'Slips', body: comparison, base: null })
  const { body: met } = (await lead.get(`/api/documents/event/${eventId}`)).body
  const drivers = [...met.drivers, { match: 'q2', team: teams[6]!, driver: nickname }]
  drivers.push({ match: 'q2', team: teams[7]!, driver: 'kit' })
  await ok(lead.send('PUT', `/api/documents/event/${eventId}`, { base: 2, body: { ...met, drivers } }))
  await lead.send('POST', '/api/invitations', { role: 'scout', nickname: 'bo of the stands', hours: 1 })
  before = { archive: (await lead.get(`/api/events/${eventId}/archive`)).body, rows: await records() }
})
afterAll(() => server.close())

test('A person has everything that is held of it as a file, and so has a lead; others learn nothing', async () => {
  const { lead, scout } = rich
  const answer = await scout.get(`/api/people/${scout.id}/data`)
  expect(answer.status).toBe(200)
  expect(answer.headers.get('content-disposition')).toBe('attachment; filename="person-Bo-of-the-stands.json"')
  expect(answer.headers.get('cache-control')).toBe('no-store')
  const { body } = answer
  expect(body).toMatchObject({
    format: 1,
    person: { id: scout.id, nickname, role: 'scout' },
    devices: [{ id: scout.device, name: 'Bo’s own phone' }],
    driven: [{ id: drive.id, event: eventId, match: null }],
    typed: [
      { kind: 'decision', id: 'davit', revision: 1 },
      { kind: 'comparison', id: 'slips', revision: 1 },
      { kind: 'event', id: eventId, revision: 3 },
    ],
    assignments: [{ event: eventId, match: 'q2', alliance: 'red', position: 1 }],
  })
  // Four observations, a photo, a visit, a ranking, a change and a rehearsal; with them what a lead corrected in its name.
  const kinds = body.records.map(({ row }: { row: Row }) => row.kind)
  expect(new Set(kinds)).toEqual(new Set(['observation', 'photo', 'visit', 'ranking', 'change', 'drill']))
  expect(body.records.find(({ row }: { row: Row }) => row.kind === 'photo').row.body.data).toBe('iVBORw0KGgo=')
  expect(body.apart.length).toBe(2)
  expect(body.audit.map(({ action }: { action: string }) => action)).toEqual(
    expect.arrayContaining(['devices.rename', 'invitations.accept']),
  )
  expect(JSON.stringify(body)).not.toMatch(/argon2|tokenHash/)
  const forLead = (await lead.get(`/api/people/${scout.id}/data`)).body
  expect({ ...forLead, madeAt: body.madeAt }).toEqual(body)
  expect((await other.get(`/api/people/${scout.id}/data`)).status).toBe(404)
})

test('The last lead is not deleted, and nobody by another’s nickname', async () => {
  const { lead, scout } = rich
  const erase = (of: string, name: string) => lead.send('POST', `/api/people/${of}/erase`, { nickname: name })
  const wrong = await erase(scout.id, 'Kit')
  expect([wrong.status, wrong.body.error.path]).toEqual([409, ['nickname']])
  const last = await erase(lead.id, 'Ada')
  expect([last.status, last.body.error.message]).toEqual([409, expect.stringMatching(/last lead/)])
  expect((await scout.get('/api/session')).body.person.nickname).toBe(nickname)
})

test('A deleted person is nowhere by name, cannot come in, and its records stay by nobody', async () => {
  const { lead, scout } = rich
  expect((await allRows()).toLowerCase()).toContain(nickname.toLowerCase())
  const log = async () => {
    const workspace = server.store.workspace(await server.store.ensureWorkspace('default'))
    const { records: held } = await workspace.records.log(eventId)
    return held.flatMap(({ row }) => (row.kind === 'observation' && row.body.driver ? [row.body.driver] : [])).sort()
  }
  expect(await log()).toEqual(['Ada', 'bo of the Stands'])

  const { status, body } = await lead.send('POST', `/api/people/${scout.id}/erase`, { nickname: ' BO of the stands' })
  expect(status, JSON.stringify(body)).toBe(200)
  expect(body).toMatchObject({ driven: 1, typed: 3 })

  expect((await scout.get('/api/reach')).status).toBe(401)
  expect((await lead.get(`/api/people/${scout.id}/data`)).status).toBe(404)
  expect((await lead.get('/api/people')).body.map(({ id }: { id: string }) => id)).not.toContain(scout.id)
  const everything = (await allRows()).toLowerCase()
  for (const gone of [nickname, 'Bo’s own']) expect(everything, gone).not.toContain(gone.toLowerCase())
  expect((await lead.get('/api/devices')).body.map(({ id }: { id: string }) => id)).not.toContain(scout.device)

  const after = await records()
  const strip = (row: Row) => (row.id === drive.id ? row.id : row)
  expect(after.map(strip)).toEqual(before.rows.map(strip))
  const driven = after.find(({ id }) => id === drive.id)!
  expect(driven.body).toMatchObject({ driver: expect.stringMatching(/^somebody-[\da-f]{8}$/) })
  // What is kept in memory follows, and the hash is that of what stands there.
  expect((await log())[1]).toMatch(/^somebody-/)
  const [kept] = await server.database.sql(`SELECT "hash", "body" FROM "FieldRecord" WHERE "id" = '${drive.id}'`)
  expect(kept).toEqual({ hash: hashed(driven).hash, body: hashed(driven).text })
  expect((await lead.get('/api/documents/decision/davit')).body.body.agreed).toEqual([
    { who: expect.stringMatching(/^somebody-/), on: '2031-02-01' },
    { who: 'Kit', on: '2031-02-01' },
  ])
})

test('A second one goes like the first, whose records stay apart from its own', async () => {
  const { lead } = rich
  const run = { match: null, origin: 'practice', driver: 'KIT', team: teams[0]!, game: 2 } as const
  const own = seen(2, 901, { ...run, scout: other.id })
  await other.send('POST', '/api/records', { device: 'phone-2', unsent: 0, rows: [own] })
  const held = (await other.get(`/api/people/${other.id}/data`)).body
  expect(held.typed.map(({ kind }: { kind: string }) => kind)).toEqual(['decision', 'comparison', 'event'])
  expect([held.driven.length, held.records.length, held.devices.length]).toEqual([1, 2, 1])
  const { status, body } = await lead.send('POST', `/api/people/${other.id}/erase`, { nickname: 'kit' })
  expect([status, body]).toEqual([200, { records: 2, driven: 1, typed: 3 }])
  expect((await other.get('/api/session')).body.person ?? null).toBeNull()
  expect((await other.get('/api/reach')).status).toBe(401)
  expect((await lead.get('/api/devices')).body.map(({ id }: { id: string }) => id)).not.toContain(other.device)
  expect(await allRows()).not.toMatch(/"kit\b|\\"kit\b/i)
  const { agreed, snapshot } = (await lead.get('/api/documents/decision/davit')).body.body
  const strangers = new Set(agreed.map(({ who }: { who: string }) => who))
  expect(strangers.size).toBe(2)
  expect(snapshot.overrides.map(({ who }: { who: string }) => who)).toEqual([...strangers])
  const { drivers } = (await lead.get(`/api/documents/event/${eventId}`)).body.body
  const drove = drivers.map(({ driver }: { driver: string }) => driver)
  expect(drove).toEqual(['Ada', '=Bo "B"', ...strangers])
  expect((await records()).filter(({ scout }) => scout === other.id).length).toBe(2)
})

test('That somebody was deleted is written down without the name, and a file does not bring it back', async () => {
  const { lead, scout } = rich
  const entries = (await lead.get('/api/audit?limit=20')).body.filter(
    ({ action }: { action: string }) => action === 'people.erase',
  )
  expect(entries).toEqual(
    [other, scout].map(({ id }) => expect.objectContaining({ subject: id, person: lead.id, detail: {} })),
  )
  const brought = await lead.send('POST', '/api/events/archive', before.archive)
  expect(brought.status, JSON.stringify(brought.body)).toBe(200)
  // Nothing new: what the file says with the name is held already.
  expect(brought.body.parts.filter(({ added }: { added: number }) => added > 0)).toEqual([])
  expect(brought.body.conflicts).toEqual([])
  expect((await allRows()).toLowerCase()).not.toContain(nickname.toLowerCase())
  expect((await lead.get('/api/named')).body).toContainEqual({ id: scout.id, nickname: null })
  const { people } = (await lead.get(`/api/events/${eventId}/archive`)).body.contents
  expect(JSON.stringify(people)).not.toMatch(/stands/i)
})

test.skipIf(onPostgresql())(
  'Nor do the database’s files hold a letter of their names, while the server still runs',
  async () => {
    const { file, sql } = server.database
    await sql('PRAGMA wal_checkpoint(TRUNCATE)')
    const bytes = ['', '-wal', '-shm']
      .map((end) => file + end)
      .filter(existsSync)
      .map((each) => readFileSync(each))
    const all = Buffer.concat(bytes).toString('latin1').toLowerCase()
    expect(all.includes('people.erase')).toBe(true)
    for (const gone of [nickname, 'own phone', '"kit"']) expect(all.includes(gone.toLowerCase()), gone).toBe(false)
  },
)

test.skipIf(onPostgresql())('The file itself holds no letter of a deleted name once the server has ended', async () => {
  const own = await startServer({ pool: { threads: 1 } })
  const { file } = own.database
  const again = await startServer({ file, pool: { threads: 1 } })
  await own.app.close()
  await own.store.close()
  onTestFinished(() => own.database.remove())
  const lead = await claim(again)
  const gone = await join(again, lead, { role: 'viewer', nickname: 'Quillfeather' })
  expect((await lead.send('POST', `/api/people/${gone.id}/erase`, { nickname: 'Quillfeather' })).status).toBe(200)
  await again.close()
  const bytes = readFileSync(file)
  expect([bytes.includes('people.erase'), bytes.includes('Quillfeather')]).toEqual([true, false])
})

test.runIf(inLongForm && !onPostgresql())(
  'The commands tell what is held and delete, once no server runs',
  async () => {
    const own = await startServer({ pool: { threads: 1 } })
    onTestFinished(() => own.database.remove())
    const lead = await claim(own)
    await join(own, lead, { role: 'viewer', nickname: 'Quillfeather' })
    const person = (...words: string[]) =>
      spawnSync(pathOf(projectRoot(), 'node_modules', '.bin', 'tsx'), ['scripts/person.ts', ...words], {
        cwd: projectRoot(),
        encoding: 'utf8',
        env: { ...process.env, DATABASE_URL: own.database.url },
      })
    expect(JSON.parse(person('data', 'quillfeather').stdout).person.nickname).toBe('Quillfeather')
    expect(person('erase', 'quillfeather')).toMatchObject({ status: 1, stderr: expect.stringMatching(/in use/) })
    await own.app.close()
    await own.store.close()
    expect(person('erase', 'Ada')).toMatchObject({ status: 1, stderr: expect.stringMatching(/last lead/) })
    expect(person('erase', 'quillfeather')).toMatchObject({ status: 0, stdout: expect.stringMatching(/^Deleted/) })
    expect(person('data', 'quillfeather')).toMatchObject({ status: 1, stderr: expect.stringMatching(/Nobody/) })
    expect(person('data', 'Ada', 'nowhere')).toMatchObject({ status: 1, stderr: expect.stringMatching(/no workspace/) })
  },
)
