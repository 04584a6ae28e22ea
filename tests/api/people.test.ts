import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { hashOfToken } from '../../src/store/people/tokens.ts'
import { harbour } from '../model/documents/harbour.ts'
import { type Server, startServer } from './server.ts'
import { claim, claimToken, cookieOf, join, type Member, memberOf, passphrase } from './team.ts'

let server: Server
/** The store's clock (ms). */
let now = Date.parse('2027-03-01T08:00:00Z')
const later = (minutes: number) => {
  now += minutes * 60_000
}

const start = async () => {
  server = await startServer({ now: () => new Date(now), pool: { threads: 1 } })
}

const device = { name: 'Phone' }

describe('A server that belongs to nobody', () => {
  beforeEach(start)
  afterEach(() => server.close())

  test('lets whoever sits at it do everything, and says so', async () => {
    expect((await server.get('/api/session')).body).toEqual({
      claimed: false,
      workspace: null,
      person: null,
      device: null,
      role: 'lead',
    })
    expect((await server.get('/api/people')).body).toEqual([])
    expect((await server.send('PUT', '/api/documents/game/harbour', { base: null, body: harbour() })).status).toBe(200)
    expect((await server.get('/api/audit')).body).toMatchObject([
      { person: null, device: null, action: 'documents.save', subject: 'game harbour' },
    ])
    // Otherwise the first scout would lock out everybody else.
    expect((await server.send('POST', '/api/invitations', { role: 'scout', hours: 1 })).status).toBe(409)
  })

  test('refuses who comes by another name or through a proxy', async () => {
    const elsewhere = [{ host: 'attacker.example' }, { 'x-forwarded-for': '203.0.113.7' }]
    const statuses = () =>
      Promise.all(elsewhere.map((headers) => server.app.inject({ method: 'GET', url: '/api/people', headers }))).then(
        (answers) => answers.map(({ statusCode }) => statusCode),
      )
    expect(await statuses()).toEqual([403, 403])
    await claim(server)
    expect(await statuses()).toEqual([401, 401])
  })

  test('is claimed once, by whoever holds the newest link in time (ASVS 6.4.1)', async () => {
    const sent = (token: string) => ({ token, nickname: 'Ada', passphrase, device })
    const claiming = async (token: string) => (await server.send('POST', '/api/session/claim', sent(token))).status
    const replaced = await claimToken(server)
    const token = await claimToken(server)
    expect(await claiming(replaced)).toBe(404)
    later(61)
    expect(await claiming(token)).toBe(409)
    const fresh = await claimToken(server)
    expect(await claiming(fresh)).toBe(200)
    expect(await claiming(fresh)).toBe(409)
    expect((await server.get('/api/people')).status).toBe(401)
  })

  test('takes no passphrase that is short or that anybody would try first, whatever its letters are (ASVS 6.2.1, 6.2.5, 6.2.11)', async () => {
    const token = await claimToken(server)
    const sent = { token, nickname: 'Ada', device }
    for (const [weak, sentence] of [
      ['eleven char', /at least 12 characters, this one has 11/],
      ['123456789012', /first that anybody would try/],
      ['Password2027!', /first that/],
      ['aaaaaaaaaaaaaaaa', /first that/],
      ['Ada Ada Ada 1234', /first that/],
      ['qwertyuiopas', /first that/],
    ] as const) {
      const { status, body } = await server.send('POST', '/api/session/claim', { ...sent, passphrase: weak })
      expect([status, body.error.path, body.error.message]).toEqual([
        400,
        ['passphrase'],
        expect.stringMatching(sentence),
      ])
    }
    // The link is still good, and there is no rule about which characters.
    const plain = { ...sent, passphrase: 'onlysmallletters' }
    expect((await server.send('POST', '/api/session/claim', plain)).status).toBe(200)
  })
})

describe('A team', () => {
  let lead: Member
  beforeAll(async () => {
    await start()
    lead = await claim(server)
  })
  afterAll(() => server.close())

  const signIn = (nickname: string, word: string, more: object = {}) =>
    server.send('POST', '/api/session', { nickname, passphrase: word, device: { name: 'Browser', ...more } })
  const invite = async (asked: object) => (await lead.send('POST', '/api/invitations', { hours: 2, ...asked })).body[0]
  const accept = (token: string, more: object = {}) =>
    server.send('POST', '/api/invitations/accept', { token, device, ...more })

  test('keeps the lead’s passphrase as argon2id of 19 MiB, two passes and one lane (OWASP; ASVS 11.4.2)', async () => {
    const workspace = server.store.workspace(await server.store.ensureWorkspace('default'))
    expect(await workspace.people.passphraseHash(lead.id)).toMatch(
      /^\$argon2id\$v=19\$m=19456,t=2,p=1\$[\w+/]{22}\$[\w+/]{43}$/,
    )
  })

  test('has cookies that no script reads and no other site sends; under https of this host only (ASVS 3.3.1, 3.3.2, 3.3.3, 3.3.4)', async () => {
    const sent = { nickname: 'ada', passphrase, device }
    const plain = await server.send('POST', '/api/session', sent)
    expect(plain.headers.getSetCookie()[0]).toMatch(
      /^cyclewright=[\w-]{43}; Max-Age=2592000; Path=\/; HttpOnly; SameSite=Strict$/,
    )
    const secure = await server.send('POST', '/api/session', sent, { 'x-forwarded-proto': 'https' })
    expect(secure.headers.getSetCookie()[0]).toMatch(
      /^__Host-cyclewright=[\w-]{43}; Max-Age=2592000; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
    )
    const { database, store } = server
    const token = cookieOf(plain).split('=')[1] as string
    expect(await store.entrance.session(token)).not.toBeNull()
    const rows = JSON.stringify(await database.sql('SELECT * FROM "Device"'))
    expect(rows).toContain(hashOfToken(token))
    expect(rows).not.toContain(token)
  })

  test('answers a wrong passphrase and an unknown nickname alike, and in the same time (ASVS 6.3.8)', async () => {
    const timed = async (nickname: string) => {
      const before = performance.now()
      const { status, body } = await signIn(nickname, 'not the right one')
      return { status, body, took: performance.now() - before }
    }
    const unknown = []
    const known = []
    for (let turn = 0; turn < 4; turn++) {
      unknown.push(await timed('Nobody'))
      known.push(await timed('Ada'))
    }
    expect(unknown.map(({ status }) => status)).toEqual([401, 401, 401, 401])
    expect(unknown[0]?.body).toEqual(known[0]?.body)
    // Without a hash the answer would come some ten times as fast. Least of four: what else the machine did is not in it.
    const least = (of: { took: number }[]) => Math.min(...of.map(({ took }) => took))
    expect(least(unknown)).toBeGreaterThan(0.5 * least(known))
    await signIn('Ada', passphrase)
  })

  test('limits attempts by nickname, whichever that is, and tells how long to wait (ASVS 6.3.1)', async () => {
    for (const nickname of ['Grace', 'ADA ']) {
      const statuses = []
      for (let turn = 0; turn < 6; turn++) statuses.push((await signIn(nickname, 'not the right one')).status)
      expect(statuses).toEqual([401, 401, 401, 401, 401, 429])
      const { body, headers } = await signIn(nickname.toLowerCase(), passphrase)
      expect(body.error.code).toBe('tooMany')
      expect(Number(headers.get('retry-after'))).toBeGreaterThan(0)
    }
    // Others sign in meanwhile.
    await join(server, lead, { role: 'lead', nickname: 'Mary' })
    expect((await signIn('mary', passphrase)).status).toBe(200)
    const refused = (await lead.get('/api/audit')).body.filter(({ action }: { action: string }) =>
      /refused/.test(action),
    )
    expect(refused.length).toBeGreaterThan(4)
    expect(JSON.stringify(refused)).not.toContain('not the right one')
  })

  test('takes an invitation once, in time, unless it is withdrawn (ASVS 6.4.1)', async () => {
    const { token, invitation } = await invite({ role: 'scout' })
    expect(invitation).toMatchObject({ role: 'scout', usedAt: null, createdBy: lead.id })
    const look = await server.send('POST', '/api/invitations/look', { token })
    expect(look.body).toEqual({
      workspace: 'default',
      role: 'scout',
      nickname: null,
      event: null,
      needsPassphrase: false,
    })
    const without = await accept(token)
    expect([without.status, without.body.error.path]).toEqual([400, ['nickname']])
    expect((await accept(token, { nickname: 'ada' })).status).toBe(409)
    const scout = memberOf(server, await accept(token, { nickname: 'Kit' }))
    expect((await scout.get('/api/session')).body).toMatchObject({
      claimed: true,
      workspace: 'default',
      person: { nickname: 'Kit', role: 'scout' },
      device: { name: 'Phone' },
      role: 'scout',
    })
    expect((await accept(token, { nickname: 'Kat' })).status).toBe(409)

    const late = (await invite({ role: 'scout' })).token
    later(121)
    const expired = await accept(late, { nickname: 'Kat' })
    expect([expired.status, expired.body.error.message]).toEqual([409, expect.stringMatching(/expired/)])

    const other = await invite({ role: 'viewer' })
    expect((await lead.send('DELETE', `/api/invitations/${other.invitation.id}`)).status).toBe(200)
    expect((await accept(other.token, { nickname: 'Kat' })).body.error.message).toMatch(/withdrawn/)
    expect((await lead.send('DELETE', `/api/invitations/${other.invitation.id}`)).status).toBe(404)
    expect((await accept('x'.repeat(43), { nickname: 'Kat' })).status).toBe(404)
  })

  test('gives a scout a second phone, and ends a session where the lead ends it (ASVS 7.4.5)', async () => {
    const first = await join(server, lead, { role: 'scout', nickname: 'Rosa' })
    const second = memberOf(server, await accept((await invite({ role: 'viewer', nickname: 'rosa' })).token))
    expect([second.id, second.device === first.device]).toEqual([first.id, false])
    // The role of a member is not changed by an invitation.
    expect((await second.get('/api/session')).body.role).toBe('scout')
    const named = await lead.send('PUT', `/api/devices/${second.device}/name`, { name: 'Rosa’s tablet' })
    expect(named.status).toBe(200)
    const { body: devices } = await lead.get('/api/devices')
    expect(devices).toContainEqual(
      expect.objectContaining({
        id: second.device,
        name: 'Rosa’s tablet',
        nickname: 'Rosa',
        unsent: 0,
        revokedAt: null,
      }),
    )
    expect((await lead.send('DELETE', `/api/devices/${first.device}`)).status).toBe(200)
    expect((await first.get('/api/reach')).status).toBe(401)
    expect((await second.get('/api/reach')).status).toBe(200)
    expect((await lead.send('DELETE', `/api/people/${first.id}/sessions`)).body).toEqual({ ended: 1 })
    expect((await second.get('/api/reach')).status).toBe(401)
  })

  test('a device stays the same one where it is its own, and nobody takes another’s', async () => {
    const rosa = await join(server, lead, { role: 'scout', nickname: 'Ines' })
    const thief = (await invite({ role: 'scout', nickname: 'Tom' })).token
    const stranger = await accept(thief, { device: { id: rosa.device, name: 'Phone' } })
    expect(stranger.body.device.id).not.toBe(rosa.device)
    expect((await rosa.get('/api/reach')).status).toBe(200)
    // The same phone, handed over: it is signed in as the next person and no longer as the first.
    const { token } = await invite({ role: 'scout', nickname: 'Uma' })
    const sent = { token, device: { id: rosa.device, name: 'Phone' } }
    const uma = memberOf(server, await rosa.send('POST', '/api/invitations/accept', sent))
    expect(uma.device).toBe(rosa.device)
    expect((await rosa.get('/api/reach')).status).toBe(401)
    expect((await uma.get('/api/session')).body.person.nickname).toBe('Uma')
  })

  test('a change of role and the end of a membership act on the next request (ASVS 7.4.2, 8.3.2)', async () => {
    const member = await join(server, lead, { role: 'mechanism', nickname: 'Emil' })
    const saving = () => member.send('PUT', '/api/documents/game/harbour', { base: null, body: harbour() })
    expect((await saving()).status).toBe(200)
    const become = (role: string) => lead.send('PUT', `/api/people/${member.id}/role`, { role })
    await become('viewer')
    expect((await saving()).status).toBe(403)
    expect((await member.get('/api/documents/game/harbour')).status).toBe(200)
    await become('scout')
    expect((await member.get('/api/documents/game/harbour')).body.error.message).toMatch(/not for a scout/)
    expect((await lead.send('DELETE', `/api/people/${member.id}`)).body).toEqual({ ended: true })
    expect((await member.get('/api/reach')).status).toBe(401)
    await lead.send('DELETE', `/api/people/${member.id}?undo=true`)
    // Taken back is not signed in.
    expect((await member.get('/api/reach')).status).toBe(401)
    expect((await lead.get('/api/people')).body).toContainEqual(
      expect.objectContaining({ id: member.id, endedAt: null, hasPassphrase: false }),
    )
  })

  test('events are kept by leads, other documents by the mechanism group too', async () => {
    const member = await join(server, lead, { role: 'mechanism', nickname: 'Noor' })
    const body = { format: 1, id: 'cup', name: 'Cup', game: 'harbour', teams: [] }
    expect((await member.send('PUT', '/api/documents/event/cup', { base: null, body })).status).toBe(403)
    expect((await member.send('DELETE', '/api/documents/event/cup')).status).toBe(403)
    expect((await lead.send('PUT', '/api/documents/event/cup', { base: null, body })).status).toBe(200)
  })

  test('is never without a lead who can sign in', async () => {
    const { body: people } = await lead.get('/api/people')
    const mary = people.find(({ nickname }: { nickname: string }) => nickname === 'Mary').id
    expect((await lead.send('DELETE', `/api/people/${mary}`)).status).toBe(200)
    for (const [method, path, body] of [
      ['DELETE', `/api/people/${lead.id}`, undefined],
      ['PUT', `/api/people/${lead.id}/role`, { role: 'viewer' }],
    ] as const) {
      const answer = await lead.send(method, path, body)
      expect([answer.status, answer.body.error.message]).toEqual([409, expect.stringMatching(/last lead/)])
    }
  })

  test('a passphrase is changed by who knows it, which ends the other sessions; a session ends when its person wants (ASVS 6.2.2, 6.2.3, 7.4.3)', async () => {
    const first = await join(server, lead, { role: 'lead', nickname: 'Vera' })
    const second = memberOf(server, await signIn('Vera', passphrase))
    const change = (current: string) =>
      first.send('PUT', '/api/session/passphrase', { current, passphrase: 'four herons on one leg' })
    expect((await change('not the right one')).body.error.path).toEqual(['current'])
    expect((await change(passphrase)).body).toEqual({ ended: 1 })
    expect([(await first.get('/api/people')).status, (await second.get('/api/people')).status]).toEqual([200, 401])
    expect((await signIn('Vera', passphrase)).status).toBe(401)
    const third = memberOf(server, await signIn('Vera', 'four herons on one leg'))
    expect((await third.send('DELETE', '/api/session?everywhere=true')).body).toEqual({ ended: 2 })
    expect([(await first.get('/api/people')).status, (await third.get('/api/people')).status]).toEqual([401, 401])
    expect((await server.bare('DELETE', '/api/session')).body).toEqual({ ended: 0 })
  })

  test('a device that was not seen for 30 days is signed out, one that comes stays (ASVS 7.3.1)', async () => {
    const member = await join(server, lead, { role: 'viewer', nickname: 'Olga' })
    later(29 * 24 * 60)
    expect((await member.get('/api/session')).headers.getSetCookie()[0]).toMatch(/Max-Age=2592000/)
    later(29 * 24 * 60)
    expect((await member.get('/api/reach')).status).toBe(200)
    later(31 * 24 * 60)
    expect((await member.get('/api/reach')).status).toBe(401)
    lead = memberOf(server, await signIn('Ada', passphrase))
  })

  test('reads what changed data in pages, newest first, without secrets', async () => {
    const page = (await lead.get('/api/audit?limit=5')).body
    expect(page).toHaveLength(5)
    const next = (await lead.get(`/api/audit?limit=5&before=${page[4].sequence}`)).body
    const sequences = [...page, ...next].map(({ sequence }) => sequence)
    expect(sequences).toEqual([...sequences].sort((a, b) => b - a))
    const all = (await lead.get('/api/audit?limit=200')).body
    expect(all.map(({ action }: { action: string }) => action)).toEqual(
      expect.arrayContaining([
        'people.changeRole',
        'people.end',
        'devices.revoke',
        'invitations.create',
        'session.claim',
      ]),
    )
    expect(all).toContainEqual(
      expect.objectContaining({ action: 'people.changeRole', person: lead.id, detail: { role: 'viewer' } }),
    )
    expect(JSON.stringify(all)).not.toMatch(/gulls|herons|argon2/)
  })
})

test('Two teams on one server see nothing of each other, and sign in by the name of their workspace (ASVS 8.4.1)', async () => {
  await start()
  const [ada, bo] = [await claim(server), await claim(server, { workspace: 'second', nickname: 'Ada' })]
  await ada.send('PUT', '/api/documents/game/harbour', { base: null, body: harbour() })
  expect((await bo.get('/api/documents/game')).body).toEqual([])
  expect((await bo.get('/api/people')).body).toHaveLength(1)
  const sent = { nickname: 'Ada', passphrase, device }
  const inSecond = await server.send('POST', '/api/session', { ...sent, workspace: 'second' })
  expect([inSecond.body.workspace, inSecond.body.person.id]).toEqual(['second', bo.id])
  expect((await server.send('POST', '/api/session', sent)).body.person.id).toBe(ada.id)
  // A further link lets somebody in who has this machine, and nobody out.
  await claim(server, { nickname: 'Lost and found' })
  expect((await ada.get('/api/people')).body).toHaveLength(2)
  await server.close()
})

test('Who is signed out right after another change hears of it before the stream ends', async () => {
  const server = await startServer()
  const lead = await claim(server)
  const scout = await join(server, lead, { role: 'scout', nickname: 'Kit' })
  const stream = await fetch(`${server.url}/api/events/anything/live`, { headers: { cookie: scout.cookie } })
  const all = stream.text()
  const role = await lead.send('PUT', `/api/people/${scout.id}/role`, { role: 'viewer' })
  expect(role.status, JSON.stringify(role.body)).toBe(200)
  expect((await lead.send('DELETE', `/api/devices/${scout.device}`)).status).toBe(200)
  // Both came within the pause in which the same is not told twice.
  expect((await all).split('event: people').length - 1).toBe(2)
  await server.close()
})
