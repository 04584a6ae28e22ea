import { parse as readStrictly } from 'csv-parse/sync'
import fc from 'fast-check'
import { strToU8, unzipSync, zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { unzipped } from '../../src/api/exchange/zip.ts'
import { hashOf } from '../../src/api/records/rows.ts'
import { canonicalJson } from '../../src/model/scouting/index.ts'
import { inLongForm } from '../browser/longForm.ts'
import { eventId, uuidOf } from '../faults/harbourEvent.ts'
import { openEvent } from '../faults/openEvent.ts'
import { oddNote, type Rich, richEvent } from './richEvent.ts'
import { type Answer, type Server, startServer } from './server.ts'
import { bySpreadsheet } from './spreadsheet.ts'

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
      ...{ results: 5, assignments: 1, records: 10, apart: 2 },
      ...{ choices: 1, drills: 1, forecasts: 2, plans: 1, selection: 3, people: 2 },
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
    // Who recorded is nobody of this server, and has a name on its board nevertheless.
    const { people } = (await target.get(`/api/events/${eventId}/board`)).body
    expect(people).toContainEqual({ id: rich.scout.id, nickname: 'Bo of the stands' })
  })

  test('brought in twice changes nothing, and nothing is written down', async () => {
    const entries = async () => (await target.get('/api/audit?limit=100')).body.length
    const before = await entries()
    const { body } = await bring(target, file.body)
    expect(body).toMatchObject({ fresh: false, conflicts: [], differs: [] })
    expect(body.parts.map(({ added }: { added: number }) => added)).toEqual(Array(13).fill(0))
    expect((await target.get(`/api/events/${eventId}/archive`)).body.hash).toBe(file.body.hash)
    expect(await entries()).toBe(before)
  })

  test('leaves what is here and differs, tells it, keeps records of other content apart and adds new ones', async () => {
    const contents = structuredClone(file.body.contents)
    contents.matches[0].match.red[0].team = '90007'
    contents.results.at(-1).result = contents.results[0].result
    contents.event.at(-1).body.name = 'Other'
    contents.people[0].nickname = 'Eve'
    contents.assignments[0].person = null
    contents.choices[0].record = null
    contents.drills[0].endedAt = null
    contents.rules[0].body.name = 'Other rules'
    contents.rules.push({ ...contents.rules[0], revision: 3 })
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
    const second = { phase: 'qualification', number: 2, play: 1 }
    expect(body.differs).toEqual([
      { part: 'event', id: eventId },
      // One revision is another here: none of them is mixed into what is here.
      { part: 'rules', id: 'harbour', detail: '1' },
      { part: 'rules', id: 'harbour', detail: '3' },
      { part: 'matches', id: 'q1', match: { phase: 'qualification', number: 1, play: 1 } },
      { part: 'results', id: 'q2', match: second },
      { part: 'results', id: 'q2', match: second },
      { part: 'assignments', id: 'q2', match: second, detail: 'red.1' },
      { part: 'choices', id: 'q1-2', match: { phase: 'qualification', number: 1, play: 2 }, detail: '90001' },
      { part: 'drills', id: contents.drills[0].id },
      { part: 'people', id: contents.people[0].id, detail: 'Eve' },
    ])
    const now = (await target.get(`/api/events/${eventId}/archive`)).body.contents
    expect(now.event).toEqual(file.body.contents.event)
    for (const part of [
      'rules',
      'matches',
      'results',
      'assignments',
      'choices',
      'drills',
      'forecasts',
      'plans',
      'selection',
      'people',
    ])
      expect(now[part], part).toEqual(file.body.contents[part])
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
    const turned = changed(({ event }) => event.reverse())
    expect((await refused(turned)).error).toMatchObject({
      message: 'Revision 1 stands behind a newer one',
      path: ['event', 1, 'revision'],
    })
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

describe('Tables', () => {
  let target: Server
  let files: { [name: string]: string }
  beforeAll(async () => {
    target = await startServer({ pool: { threads: 1 } })
    files = await fetched('')
  })
  afterAll(() => target.close())

  async function fetched(query: string): Promise<{ [name: string]: string }> {
    const headers = { cookie: rich.lead.cookie }
    const answer = await fetch(`${source.url}/api/events/${eventId}/tables${query}`, { headers })
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/zip'])
    const read = unzipSync(new Uint8Array(await answer.arrayBuffer()))
    return Object.fromEntries(Object.entries(read).map(([name, bytes]) => [name, decoder.decode(bytes)]))
  }

  const decoder = new TextDecoder('utf-8', { ignoreBOM: true })
  const zip = (of: { [name: string]: string }) =>
    new Blob([
      new Uint8Array(zipSync(Object.fromEntries(Object.entries(of).map(([name, text]) => [name, strToU8(text)])))),
    ])
  const put = (server: Server, of: { [name: string]: string }, query = '', headers = {}) =>
    server.raw(`/api/events/tables${query}`, zip(of), { 'content-type': 'application/zip', ...headers })
  const hashesIn = (contents: { records: { hash: string }[] }) => contents.records.map(({ hash }) => hash)

  test('stand beside their description, which names each file, its columns and what belongs together', () => {
    const described = JSON.parse(files['datapackage.json']!)
    const paths = described.resources.map(({ path }: { path: string }) => path)
    expect(Object.keys(files).sort()).toEqual(['datapackage.json', ...paths].sort())
    for (const { path, schema } of described.resources) {
      const [head] = files[path]!.split('\r\n')
      expect(head).toBe(schema.fields.map(({ name }: { name: string }) => name).join(','))
      for (const key of schema.primaryKey) expect(head!.split(',')).toContain(key)
    }
    const happenings = described.resources.find(({ name }: { name: string }) => name === 'happenings')
    expect(happenings.schema.foreignKeys).toEqual([
      { fields: ['observation'], reference: { resource: 'observations', fields: ['id'] } },
    ])
    // A note that begins with a formula's sign has an apostrophe in front, and its quotation marks are doubled.
    expect(files['observations.csv']).toContain(`"'${oddNote.replaceAll('"', '""')}"`)
    // Another reader of RFC 4180 finds the same.
    const read = readStrictly(files['observations.csv']!, { columns: true, record_delimiter: '\r\n' })
    expect(read).toHaveLength(5)
    expect(read[0]).toMatchObject({ note: `'${oddNote}`, happenings: '12', match: 'q1', departed_at: '' })
  })

  test('ask for the game first, and are then taken in with every record’s hash, also with byte-order marks', async () => {
    const refused = await put(target, files)
    expect([refused.status, refused.body.error]).toEqual([
      400,
      expect.objectContaining({ path: ['event', 2, 'game'], message: expect.stringContaining('is not here') }),
    ])
    await openEvent(target.url)
    await target.bare('DELETE', `/api/documents/event/${eventId}`)
    const marked = await fetched('?mark=true')
    expect(marked['matches.csv']!.codePointAt(0)).toBe(0xfeff)
    const { status, body } = await put(target, marked)
    expect(status, JSON.stringify(body)).toBe(200)
    // What was removed here is here again; its name was another one, and stays.
    expect(body.differs).toEqual([{ part: 'event', id: eventId }])
    expect(body.back).toBe(true)
    const now = (await target.get(`/api/events/${eventId}/archive`)).body.contents
    const before = file.body.contents
    expect(hashesIn(now)).toEqual(hashesIn(before))
    expect(now.records).toEqual(before.records)
    expect(now.matches.map(({ match, removed }: { match: object; removed: boolean }) => [match, removed])).toEqual(
      before.matches.map(({ match, removed }: { match: object; removed: boolean }) => [match, removed]),
    )
    const result = now.results.find(({ match }: { match: string }) => match === 'q1-2')
    expect(result.result).toEqual(before.results.find(({ revision }: { revision: number }) => revision === 2).result)
  })

  test('taken in where everything is, change nothing, also as spreadsheets write them', async () => {
    for (const of of [files, bySpreadsheet(files, ';'), bySpreadsheet(files, '\t')]) {
      const { status, body } = await put(source, of, '', { cookie: rich.lead.cookie })
      expect({ status, ...body }).toMatchObject({ status: 200, fresh: false, conflicts: [], differs: [] })
    }
    expect((await rich.lead.get(`/api/events/${eventId}/archive`)).body.hash).toBe(file.body.hash)
  })

  test('can leave photos out', async () => {
    expect(files['photos.csv']).toContain('iVBORw0KGgo=')
    const without = await fetched('?photos=false')
    expect(without['photos.csv']).toBeUndefined()
    expect((await put(target, without, '?preview=true')).body.conflicts).toEqual([])
  })

  test('with what can not be are refused by table, line and column, all at once', async () => {
    const changed = {
      ...files,
      'happenings.csv': files['happenings.csv']!.replace(',collected,', ',eaten,'),
      'matches.csv': files['matches.csv']!.replace(',90002,', ',90_002,'),
    }
    const { status, body } = await put(target, changed)
    expect(status).toBe(400)
    expect(body.problems.map(({ path }: { path: unknown[] }) => path)).toEqual([
      ['matches', 3, 'team'],
      ['happenings', 2, 'what'],
    ])
    const less = { ...files, 'happenings.csv': files['happenings.csv']!.replace(/\r\n[^\r]*\r\n$/, '\r\n') }
    expect((await put(target, less)).body.error).toMatchObject({
      path: ['observations', expect.any(Number), 'happenings'],
      message: expect.stringMatching(/should have 12 lines in happenings, which has 11/),
    })
    const { 'event.csv': _, ...headless } = files
    expect((await put(target, headless)).body.error.message).toMatch(/no event.csv/)
    expect((await put(target, { ...files, 'teams.csv': '"team' })).body.error.message).toMatch(/Quotation marks/)
    const broken = await target.raw('/api/events/tables', 'not zipped', { 'content-type': 'application/zip' })
    expect([broken.status, broken.body.error.message]).toEqual([400, expect.stringMatching(/no zip file/)])
    expect((await target.raw('/api/events/tables', '{}', json)).status).toBe(415)
    // What unpacks into more than is read is not unpacked.
    const bomb = zipSync({ 'event.csv': new Uint8Array(1_000_001) })
    expect(unzipped(bomb, 1_000_000)).toMatchObject({ said: { code: 'zipTooLarge', parts: { megabytes: 1 } } })
  })

  test('in which somebody changed a record leave the first as it was and keep the other apart', async () => {
    const before = (await target.get(`/api/events/${eventId}/archive`)).body
    const changed = { ...files, 'changes.csv': files['changes.csv']!.replace("'@new intake", 'New arm') }
    const { body } = await put(target, changed)
    expect(body.conflicts).toHaveLength(1)
    const after = (await target.get(`/api/events/${eventId}/archive`)).body
    expect(after.contents.records).toEqual(before.contents.records)
    expect(after.contents.apart).toHaveLength(before.contents.apart.length + 1)
  })
})

describe('Whatever is changed in an archive, its hash made right again,', () => {
  type Path = (string | number)[]
  // biome-ignore lint/suspicious/noExplicitAny: an archive that is no longer what its type says
  type Anything = any
  const pathsOf = (value: unknown, path: Path = []): Path[] => {
    if (typeof value !== 'object' || value === null) return [path]
    const inner = Object.entries(value).flatMap(([key, part]) =>
      pathsOf(part, [...path, Array.isArray(value) ? Number(key) : key]),
    )
    return path.length < 2 ? inner : [path, ...inner]
  }
  const odd = [0, -1, 1.5, 1e9, '', '=1', 'q1', '90001', null, true, [], {}, '2031-02-28T08:00:00.000Z', '\ud800']

  test('the answer is a report or a sentence, and an accepted one goes out and comes in again', async () => {
    const target = await startServer({ pool: { threads: 1 } })
    const { rules: _, ...rest } = file.body.contents
    // Without the rules, which other tests change, so that most changes are of the event.
    const paths = pathsOf({ ...rest })
    const change = fc.record({
      path: fc.constantFrom(...paths),
      how: fc.constantFrom('put', 'put', 'take', 'repeat'),
      value: fc.oneof(fc.constantFrom<unknown>(...odd), fc.jsonValue({ maxDepth: 2 })),
    })
    const seen = new Set<number>()
    try {
      await fc.assert(
        fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 2 }), fc.nat(), async (changes, number) => {
          const contents: Anything = structuredClone(file.body.contents)
          for (const { path, how, value } of changes) {
            const parent = path.slice(0, -1).reduce<Anything>((part, key) => part?.[key], contents)
            const key = path.at(-1)!
            if (typeof parent !== 'object' || parent === null) continue
            if (how === 'put') parent[key] = value
            else if (how === 'repeat' && Array.isArray(parent)) parent.push(structuredClone(parent[Number(key)]))
            else if (how === 'take') Array.isArray(parent) ? parent.splice(Number(key), 1) : delete parent[key]
          }
          // As another event each time, so that what is accepted meets an empty place.
          const id = `event-${number}`
          for (const each of contents.event) if (each?.body?.id) each.body.id = id
          for (const each of [...contents.records, ...contents.apart]) {
            if (typeof each?.row !== 'object' || each.row === null) continue
            if (each.row.event === eventId) each.row.event = id
            each.hash = hashOf(canonicalJson(each.row))
          }
          const sent = { ...file.body, contents, hash: hashOf(canonicalJson(contents)) }
          const { status, body } = await bring(target, sent)
          seen.add(status)
          expect([200, 400], JSON.stringify(body).slice(0, 400)).toContain(status)
          if (status === 400) {
            expect(body.error.message.length).toBeGreaterThan(10)
            return
          }
          const again = await bring(target, (await target.get(`/api/events/${id}/archive`)).body)
          expect(again.body.parts.every(({ added }: { added: number }) => added === 0)).toBe(true)
        }),
        { numRuns: inLongForm ? 600 : 25, seed: 7 },
      )
      expect([...seen].sort()).toEqual([200, 400])
    } finally {
      await target.close()
    }
  })
})
