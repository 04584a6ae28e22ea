import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hashOf } from '../../src/api/records/rows.ts'
import { canonicalJson } from '../../src/model/scouting/index.ts'
import { eventId, uuidOf } from '../faults/harbourEvent.ts'
import { type Rich, richEvent } from './richEvent.ts'
import { type Answer, type Server, startServer } from './server.ts'

let source: Server
let rich: Rich
let file: Answer

beforeAll(async () => {
  source = await startServer({ pool: { threads: 1 } })
  rich = await richEvent(source)
  file = await rich.lead.get(`/api/events/${eventId}/archive`)
})
afterAll(() => source.close())

const json = { 'content-type': 'application/json' }
const bring = (server: Server, archive: unknown, query = '') =>
  server.raw(`/api/events/archive${query}`, JSON.stringify(archive), json)

describe('An archive', () => {
  let target: Server
  beforeAll(async () => {
    target = await startServer({ pool: { threads: 1 } })
  })
  afterAll(() => target.close())

  test('holds everything of the event under the hash of its content, and is a file for leads', async () => {
    expect(file.status).toBe(200)
    expect(file.headers.get('content-disposition')).toBe('attachment; filename="open-water-archive.json"')
    const { hash, contents } = file.body
    expect(hash).toBe(hashOf(canonicalJson(contents)))
    const sizes = Object.fromEntries(Object.entries(contents).map(([part, all]) => [part, (all as unknown[]).length]))
    // 9 records were sent and one corrected; results: q1 once, its replay and q2 twice each.
    expect(sizes).toEqual({
      event: 2,
      rules: 2,
      matches: 4,
      results: 5,
      assignments: 1,
      records: 10,
      apart: 2,
      choices: 1,
      drills: 1,
      people: 2,
    })
    expect(contents.people.map(({ nickname }: { nickname: string }) => nickname).sort()).toEqual([
      'Ada',
      'Bo of the stands',
    ])
    expect((await rich.scout.get(`/api/events/${eventId}/archive`)).status).toBe(403)
  })

  test('says what it would change, changes nothing by that, and gives the same hash where it was brought in', async () => {
    const looked = await bring(target, file.body, '?preview=true')
    expect(looked.body).toMatchObject({ event: { id: eventId, name: 'Open Water “Cup”' }, fresh: true, differs: [] })
    expect((await target.get(`/api/events/${eventId}/archive`)).status).toBe(404)
    const brought = await bring(target, file.body)
    expect([brought.status, brought.body]).toEqual([200, looked.body])
    const again = await target.get(`/api/events/${eventId}/archive`)
    expect(again.body.contents).toEqual(file.body.contents)
    expect(again.body.hash).toBe(file.body.hash)
  })

  test('brought in twice changes nothing, and nothing is written down', async () => {
    const entries = async () => (await target.get('/api/audit?limit=100')).body.length
    const before = await entries()
    const { body } = await bring(target, file.body)
    expect(body).toMatchObject({ fresh: false, conflicts: [], differs: [] })
    expect(body.parts.map(({ added }: { added: number }) => added)).toEqual(Array(10).fill(0))
    expect((await target.get(`/api/events/${eventId}/archive`)).body.hash).toBe(file.body.hash)
    expect(await entries()).toBe(before)
  })

  test('leaves what is here and differs, tells it, keeps records of other content apart and adds new ones', async () => {
    const contents = structuredClone(file.body.contents)
    contents.matches[0].match.red[0].team = '90007'
    contents.results.at(-1).result = contents.results[0].result
    contents.event.at(-1).body.name = 'Other'
    contents.people[0].nickname = 'Eve'
    const [first] = contents.records
    const rehash = (record: { hash: string; row: unknown }) => {
      record.hash = hashOf(canonicalJson(record.row))
    }
    first.row.body.note = 'Other'
    rehash(first)
    const added = structuredClone(first)
    added.row.id = added.row.body.id = uuidOf(9, 9)
    rehash(added)
    contents.records.push(added)
    const archive = { ...file.body, contents, hash: hashOf(canonicalJson(contents)) }
    const { status, body } = await bring(target, archive)
    expect(status, JSON.stringify(body)).toBe(200)
    expect(body.conflicts).toEqual([first.row.id])
    expect(body.differs).toEqual([
      { part: 'event', id: eventId },
      { part: 'matches', id: 'q1' },
      { part: 'results', id: 'q2' },
      { part: 'results', id: 'q2' },
      { part: 'people', id: contents.people[0].id, detail: 'Eve' },
    ])
    const now = (await target.get(`/api/events/${eventId}/archive`)).body.contents
    expect(now.event).toEqual(file.body.contents.event)
    expect(now.matches).toEqual(file.body.contents.matches)
    expect(now.records).toEqual([...file.body.contents.records, added])
    expect(now.apart.at(-1)).toMatchObject({ hash: first.hash, reason: 'otherContent', resolution: null })
    const [entry] = (await target.get('/api/audit?limit=1')).body
    expect(entry).toMatchObject({ action: 'exchange.archive.bring', subject: eventId, detail: { records: 1 } })
  })
})

describe('An archive is refused in a sentence', () => {
  const changed = (change: (contents: typeof file.body.contents) => void) => {
    const contents = structuredClone(file.body.contents)
    change(contents)
    return { ...file.body, contents, hash: hashOf(canonicalJson(contents)) }
  }
  const refused = async (archive: unknown) => {
    const { status, body } = await bring(source, archive)
    // The server is claimed: as its lead.
    expect(status).toBe(401)
    const answer = await rich.lead.send('POST', '/api/events/archive', archive)
    expect(answer.status).toBe(400)
    expect(body.error.code).toBe('unauthenticated')
    return answer.body
  }

  test('that is damaged', async () => {
    const damaged = structuredClone(file.body)
    damaged.contents.records[0].row.body.team = '1'
    expect((await refused(damaged)).error).toMatchObject({
      message: expect.stringContaining('damaged'),
      path: ['hash'],
    })
  })

  test('of another form, with the field and its sentence for other languages', async () => {
    const { error, problems } = await refused(
      changed((contents) => {
        contents.matches[0].match.number = 'one'
      }),
    )
    expect(error.path).toEqual(['contents', 'matches', 0, 'match', 'number'])
    expect(problems[0].said.code).toBeDefined()
    expect((await refused({ format: 1 })).error.message).toMatch(/archive|hash/)
  })

  test('that says something that can not be', async () => {
    const twice = changed(({ records }) => records.push(records[0]))
    expect((await refused(twice)).error.path).toEqual(['records', 10])
    const homeless = changed((contents) => {
      contents.results[0].match = 'nowhere'
    })
    expect((await refused(homeless)).error.message).toBe('There is no match “nowhere” in the file')
    const forged = changed(({ records }) => {
      records[3].row.body.note = 'Forged'
    })
    expect((await refused(forged)).error.message).toMatch(/hash is not that of its content/)
    const other = changed(({ apart }) => {
      apart[0].row.event = 'other'
      apart[0].hash = hashOf(canonicalJson(apart[0].row))
    })
    expect((await refused(other)).error.message).toMatch(/belongs to the event “other”/)
  })

  test('and larger bodies are read there, and there alone', async () => {
    const large = { ...file.body, contents: { ...file.body.contents, more: 'x'.repeat(3_000_000) } }
    expect((await rich.lead.send('POST', '/api/events/archive', large)).body.error.message).toMatch(/damaged/)
    const elsewhere = await rich.lead.send('PUT', '/api/documents/game/harbour', { base: 2, body: large })
    expect([elsewhere.status, elsewhere.body.error.message]).toEqual([413, expect.stringContaining('2 MB')])
  })
})
