import { strToU8, zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Offered, offered } from '../../src/api/http/endpoints.ts'
import { hashOf } from '../../src/api/records/rows.ts'
import { type Role, roles } from '../../src/api/who.ts'
import { canonicalJson } from '../../src/model/scouting/index.ts'
import { eventTables } from '../../src/model/scouting/tables/index.ts'
import { onPostgresql } from '../engines.ts'
import { harbour } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'
import { claim, join, type Member, team } from './team.ts'

let server: Server
let members: { [role in Role]: Member }

beforeAll(async () => {
  server = await startServer({ pool: { threads: 1 } })
  members = await team(server)
})
afterAll(() => server.close())

const all = offered()
const gated = all.filter(({ endpoint }) => endpoint.may !== undefined)
const open = all.filter(({ endpoint }) => endpoint.may === undefined)

/** The address with ids put in, and what else is asked. */
function requestOf({ endpoint }: Offered, given: { [field: string]: unknown }) {
  const path = endpoint.path.replaceAll(/\{(\w+)\}/g, (_, key) => encodeURIComponent(String(given[key] ?? 'nothing')))
  const rest = Object.entries(given).filter(([key]) => !endpoint.path.includes(`{${key}}`))
  if (endpoint.takes) return { path: `${path}?preview=true`, body: given['file'] ?? {} }
  if (endpoint.method === 'POST' || endpoint.method === 'PUT') return { path, body: Object.fromEntries(rest) }
  const query = new URLSearchParams(rest.map(([key, value]) => [key, String(value)])).toString()
  return { path: query === '' ? path : `${path}?${query}`, body: undefined }
}

async function call(each: Offered, who: Member | null, given: { [field: string]: unknown } = {}) {
  const { path, body } = requestOf(each, given)
  if (each.endpoint.takes?.type === 'application/zip') {
    const headers = { 'content-type': 'application/zip', ...(who && { cookie: who.cookie }) }
    return server.raw(path, body instanceof Uint8Array ? new Blob([new Uint8Array(body)]) : 'no zip', headers)
  }
  if (who) return who.send(each.endpoint.method, path, body)
  return body === undefined ? server.bare(each.endpoint.method, path) : server.send(each.endpoint.method, path, body)
}

describe('Each procedure and each role (ASVS 8.2.1, 8.3.1):', () => {
  test('there are procedures of both kinds, and those that are open are these', () => {
    expect(gated.length).toBeGreaterThan(40)
    // Whoever adds one here opens it to everybody who reaches the server.
    expect(open.map(({ name }) => name).sort()).toEqual([
      'guesses.arrive',
      'guesses.get',
      'guesses.give',
      'health',
      'invitations.accept',
      'invitations.look',
      'ready',
      'schemas.game',
      'schemas.guessRounds',
      'session.claim',
      'session.get',
      'session.signIn',
      'session.signOut',
    ])
  })

  test.each(gated.map((each) => [each.name, each] as const))('%s', async (_, each) => {
    // A request without what it needs: who is let in is told what is missing, and nothing is changed.
    const nobody = await call(each, null)
    expect([nobody.status, nobody.body.error.code]).toEqual([401, 'unauthenticated'])
    for (const role of roles) {
      const { status, body } = await call(each, members[role])
      const allowed = role === 'lead' || (each.endpoint.may ?? []).includes(role)
      if (allowed) expect([401, 403], `${role}: ${JSON.stringify(body)}`).not.toContain(status)
      else expect([role, status, body.error.code]).toEqual([role, 403, 'forbidden'])
    }
  })

  test('what is open lets everybody ask', async () => {
    for (const each of open) expect([401, 403], each.name).not.toContain((await call(each, null)).status)
  })

  test('the web’s own way to ask has the same gates', async () => {
    const asked = `/trpc/people.list?input=${encodeURIComponent('{}')}`
    expect((await server.get(asked)).status).toBe(401)
    expect((await members.scout.get(asked)).body.error.data.failure).toMatchObject({
      code: 'forbidden',
      said: { code: 'notForRole', parts: { role: 'scout' } },
    })
    expect((await members.lead.get(asked)).status).toBe(200)
  })

  test('a stream of events has them too', async () => {
    const stream = '/api/jobs/00000000-0000-4000-8000-000000000000/events'
    expect((await server.get(stream)).status).toBe(401)
    expect((await members.scout.get(stream)).status).toBe(403)
    expect((await members.viewer.get(stream)).status).toBe(404)
  })
})

describe('A lead of one team and what belongs to another (ASVS 8.2.2, 8.4.1):', () => {
  let theirs: { [field: string]: string }
  let before: string
  let workspaceId: string
  const mark = 'Hemlock'
  const gone = '00000000-0000-4000-8000-000000000000'

  /** All rows of a team, in each table that has any. */
  async function rowsOf(): Promise<string> {
    const { tables, sql } = server.database
    const rows: unknown[] = []
    for (const table of await tables('workspaceId'))
      rows.push([table, await sql(`SELECT * FROM "${table}" WHERE "workspaceId" = '${workspaceId}' ORDER BY 1, 2, 3`)])
    expect(JSON.stringify(rows)).toContain(mark)
    return JSON.stringify(rows)
  }

  beforeAll(async () => {
    const lead = await claim(server, { workspace: 'other', nickname: `Ada ${mark}` })
    workspaceId = await server.store.ensureWorkspace('other')
    const member = await join(server, lead, { role: 'mechanism', nickname: `Bo ${mark}` })
    const { body: invited } = await lead.send('POST', '/api/invitations', { role: 'viewer', nickname: mark, hours: 1 })
    await lead.send('PUT', '/api/documents/game/theirs', {
      base: null,
      body: { ...harbour(), id: 'theirs', name: mark },
    })
    const cup = { format: 1, id: 'cup', name: mark, game: 'theirs', teams: [] }
    await lead.send('PUT', '/api/documents/event/cup', { base: null, body: cup })
    const about = { way: mark, places: [mark], load: 1 }
    const subject = { sheet: 'sheet', way: 'way', leg: 'collect' as const, about }
    const workspace = server.store.workspace(workspaceId)
    const round = await workspace.rounds.open(subject)
    const job = await workspace.jobs.add({ kind: 'match', name: mark, request: {} })
    // Or a server that shares its jobs would compute it.
    await workspace.jobs.end(job.id, { state: 'interrupted', done: 0, total: null })
    theirs = {
      kind: 'game',
      id: 'theirs',
      event: 'cup',
      person: member.id,
      device: member.device,
      invitation: invited[0].invitation.id,
      code: round?.code ?? '',
      sheet: 'sheet',
      job: job.id,
    }
    before = await rowsOf()
  })

  /** An event of their id, as a file. */
  function archive() {
    const savedAt = '2031-02-28T08:00:00.000Z'
    const body = { format: 1, id: 'cup', name: 'Taken', game: 'theirs', teams: [] }
    const parts = ['rules', 'matches', 'results', 'assignments', 'records', 'apart', 'choices', 'drills', 'people']
    const event = [{ revision: 1, body, note: null, savedAt }]
    const contents = { event, ...Object.fromEntries(parts.map((part) => [part, []])) }
    return { format: 1, archive: 'event', hash: hashOf(canonicalJson(contents)), contents }
  }

  /** The same as tables, of a game that is not theirs alone. */
  function tables() {
    const columns = eventTables.event.fields.map(({ name }) => name)
    const cells = columns.map((name) => ({ id: 'cup', name: 'Taken', game: 'theirs' })[name] ?? '')
    return zipSync({ 'event.csv': strToU8(`${columns.join(',')}\r\n${cells.join(',')}\r\n`) })
  }

  const planBody = {
    ...{ alliance: 'red', jobs: [], threat: { team: '90001', marker: null } },
    ...{ win: 0.5, scores: { ours: 1, theirs: 1 }, note: 'Taken' },
  }

  /** What else a request needs to be taken as one; a new procedure with a body has its entry here. */
  const bodies: { readonly [name: string]: { [field: string]: unknown } } = {
    'backups.make': {},
    'backups.prove': { name: 'team 2026-01-01T00.00.00.000Z.db' },
    'documents.save': { base: 1, body: { ...harbour(), id: 'theirs', name: 'Taken' } },
    'documents.check': { body: {} },
    'documents.restore': { revision: 1, base: 1 },
    'documents.saveReading': {
      base: 1,
      body: { ...harbour(), id: 'theirs', name: 'Taken' },
      reading: { id: 'r', name: 'R', rule: '1' },
    },
    'guesses.open': { way: 'way', leg: 'collect' },
    'guesses.bring': { file: { format: 1, sheet: { id: 'sheet', name: 'S' }, rounds: [] } },
    'invitations.create': { role: 'viewer', hours: 1 },
    'event.schedule.preview': { matches: [] },
    'event.schedule.edit': { mark: 'x', matches: [] },
    'event.results.preview': { results: [] },
    'event.results.enter': { results: [{ match: 'm', base: 0, matchRevision: 1, result: null }] },
    'event.assignments.preview': { people: ['x'], longest: 5, rest: 1 },
    'event.assignments.assign': { mark: 'x', assignments: [] },
    'event.assignments.take': { match: 'm', seat: { alliance: 'red', position: 1 } },
    'exchange.bringArchive': { file: archive() },
    'exchange.bringTables': { file: tables() },
    'records.accept': { unsent: 0, rows: [] },
    'briefing.get': { match: 'm' },
    'briefing.agree': { match: 'm', from: '0'.repeat(64), body: planBody },
    'briefing.broken': { team: '90001' },
    'estimates.sideBySide': { teams: '90001,90002' },
    'seeds.seedLots': { most: 4 },
    'looks.where': { team: '90001' },
    'estimates.withEarlier': { earlier: 'other', discount: 0.5 },
    'estimates.without': { records: [gone] },
    'estimates.changed': { records: [gone] },
    'estimates.field': { design: 'd' },
    'lead.correct': { record: gone, changes: { note: 'Taken' }, reason: 'Taken' },
    'lead.swap': { match: 'm', records: [gone], reason: 'Taken' },
    'lead.resolve': { arrival: 1, resolution: 'kept' },
    'lead.choose': { match: 'm', team: '90001', record: gone },
    'picks.write': { after: null, lines: [{ id: gone, line: { kind: 'undoes', line: gone } }] },
    'picks.note': { after: null, lines: [{ id: gone, line: { kind: 'order', teams: [] } }] },
    'stands.training': { seed: 1 },
    'people.erase': { nickname: 'Taken' },
    'people.changeRole': { role: 'viewer' },
    'devices.rename': { name: 'Taken' },
  }

  /** These name nothing that is anybody’s: they take whole documents, or are about whoever asks. */
  const computes = ({ name, endpoint }: Offered) => endpoint.audit === false && name.startsWith('compute.')
  const named = gated.filter(
    (each) => !computes(each) && !['jobs.start', 'session.changePassphrase'].includes(each.name),
  )

  /** Fields of a procedure's input. */
  function fieldsOf({ procedure }: Offered): string[] {
    const [input] = (procedure._def as unknown as { inputs: { shape?: object }[] }).inputs
    return Object.keys(input?.shape ?? {})
  }

  test.each(named.map((each) => [each.name, each] as const))('%s', async (_, each) => {
    const { name } = each
    const ids = { ...theirs, id: name.startsWith('jobs.') ? (theirs['job'] as string) : (theirs['id'] as string) }
    const known = Object.entries(ids).filter(([key]) => fieldsOf(each).includes(key))
    const { status, body } = await call(each, members.lead, { ...Object.fromEntries(known), ...bodies[name] })
    const text = JSON.stringify(body)
    // It says nothing of theirs, and it is a request: otherwise what it would have done was not tried.
    expect(text).not.toContain(mark)
    const fits = onPostgresql() && name === 'backups.make' ? [422] : [200, 404, 409]
    expect(fits, `${name}: ${text}`).toContain(status)
    if (known.length > 0 && each.endpoint.path.includes('{id}') && each.endpoint.method === 'GET') {
      expect(status, text).toBe(404)
    }
  })

  test('a file with an event of their id comes to one’s own team', async () => {
    expect((await members.lead.send('POST', '/api/events/archive', archive())).body).toMatchObject({ fresh: true })
    expect((await members.lead.get('/api/events/cup/archive')).body.contents.event[0].body.name).toBe('Taken')
  })

  test('nothing of theirs was changed', async () => {
    expect(await rowsOf()).toBe(before)
  })

  test('a round’s code opens that round alone, for whoever has it', async () => {
    const { code } = theirs
    const answer = await server.get(`/api/guess-rounds/${code}`)
    expect([answer.status, answer.body.about.way]).toEqual([200, mark])
    expect((await members.lead.send('POST', `/api/guess-rounds/${code}/close`, {})).status).toBe(404)
    expect((await members.lead.send('POST', `/api/guess-rounds/${code}/remove`, {})).status).toBe(404)
    expect((await server.get('/api/guess-rounds?sheet=sheet')).status).toBe(401)
  })

  test('a job of theirs can not be followed', async () => {
    expect((await members.lead.get(`/api/jobs/${theirs['job']}/events`)).status).toBe(404)
    expect((await members.lead.get(`/api/jobs/${gone}`)).status).toBe(404)
  })
})
