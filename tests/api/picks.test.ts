import { afterAll, beforeAll, expect, test } from 'vitest'
import { seededEvent } from '../../seed/index.ts'
import { ratings as contract, pickOrder } from '../../src/api/picks/contracts.ts'
import { onlyWorkspace } from '../../src/app.ts'
import { type PackedRating, unpackRating } from '../../src/model/picks/index.ts'
import { PreparedPicks } from '../../src/model/picks/prepared.ts'
import { protocolOf } from '../../src/model/picks/protocol/index.ts'
import { askOf, seedsBy, usualRules } from '../../src/model/picks/usual.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { inLongForm } from '../browser/longForm.ts'
import { type Server, startServer } from './server.ts'
import { type Member, team } from './team.ts'

const { event } = seededEvent()
const seeds = event.teams.map(({ team: id }) => id)
const address = `/api/events/${event.id}/selection`
const rules = { alliances: 4, size: 4, serpentine: true, captainsInvitable: true, afterDeclining: 'captain' }
const id = (k: number) => `50000000-0000-4000-8000-${String(k).padStart(12, '0')}`
const line = (k: number, of: object) => ({ id: id(k), line: of })
const accepts = (k: number, who: string) => line(k, { kind: 'called', step: { kind: 'accepts', team: who } })

let server: Server
let members: Awaited<ReturnType<typeof team>>
beforeAll(async () => {
  server = await startServer({ pool: { threads: 2 } })
  await seedIfEmpty(server.store, onlyWorkspace)
  members = await team(server)
})
afterAll(() => server.close())

const write = (who: Member, after: string | null, lines: object[], at = '') =>
  who.send('POST', `${address}${at}`, { after, lines })

test('A selection is written line by line, once, and whoever comes second is told', async () => {
  const { lead, driveTeam, scout } = members
  const begun = await write(lead, null, [line(1, { kind: 'begins', rules, seeds })])
  expect([begun.status, begun.body.lines.length]).toEqual([200, 1])
  expect(begun.body.lines[0]).toMatchObject({ person: lead.id, line: { kind: 'begins' } })
  // Two press at once: one is taken, the other hears of it and has written nothing.
  const both = await Promise.all([
    write(lead, id(1), [accepts(2, seeds[5]!)]),
    write(driveTeam, id(1), [accepts(3, seeds[6]!)]),
  ])
  expect(both.map(({ status }) => status).sort()).toEqual([200, 409])
  const first = both.findIndex(({ status }) => status === 200)
  expect(both[1 - first]!.body.error).toMatchObject({ code: 'conflict' })
  // Its answer was lost, and it is sent again: it stands there once.
  const again = await (first === 0
    ? write(lead, id(1), [accepts(2, seeds[5]!)])
    : write(driveTeam, id(1), [accepts(3, seeds[6]!)]))
  expect([again.status, again.body.lines.length]).toEqual([200, 2])
  const newest = again.body.lines.at(-1).id
  const taken = seeds[5 + first]!
  const twice = await write(lead, newest, [accepts(4, taken)])
  expect([twice.status, twice.body.error.message]).toEqual([409, `Team ${taken} is in an alliance already`])
  expect((await write(lead, newest, [accepts(4, '12345')])).body.error).toMatchObject({ code: 'malformed' })
  const undone = await write(driveTeam, newest, [line(5, { kind: 'undoes', line: newest })])
  expect(undone.body.lines.map((each: { id: string }) => each.id)).toEqual([id(1), newest, id(5)])
  expect((await write(scout, id(5), [accepts(6, taken)])).status).toBe(403)
})

test('Notes are for leads: nobody else writes or reads them', async () => {
  const { lead, driveTeam } = members
  const aside = [line(20, { kind: 'aside', team: seeds[3], reason: 'Brakes' })]
  expect((await write(driveTeam, null, aside, '/notes')).status).toBe(403)
  expect((await write(lead, null, aside, '/notes')).status).toBe(200)
  const mixed = [
    line(21, { kind: 'order', teams: [seeds[2]] }),
    line(22, { kind: 'aside', team: seeds[3], reason: null }),
  ]
  expect((await write(lead, null, mixed, '/notes')).body.error).toMatchObject({ code: 'malformed', path: ['lines', 1] })
  expect((await write(lead, null, mixed.slice(0, 1), '/notes')).status).toBe(200)
  const kinds = async (who: Member) =>
    new Set((await who.get(address)).body.lines.map(({ line: { kind } }: { line: { kind: string } }) => kind))
  expect([...(await kinds(lead))].sort()).toEqual(['aside', 'begins', 'called', 'order', 'undoes'])
  expect([...(await kinds(driveTeam))].sort()).toEqual(['begins', 'called', 'undoes'])
})

test('Ratings come in 400 draws that add up, and are not sent again', async () => {
  const { body } = await members.driveTeam.get(`/api/events/${event.id}/ratings`)
  const { mark, ratings } = contract.parse(body)
  const game = (await members.lead.get(`/api/documents/game/${event.game}`)).body.body
  expect(Object.keys(ratings!)).toEqual(seeds)
  const { teams } = (await members.lead.get(`/api/events/${event.id}/estimates`)).body
  for (const who of [seeds[0]!, seeds[17]!]) {
    const { points, finishing } = unpackRating(game, ratings![who] as PackedRating)
    expect(points.length).toBe(400)
    const mean = points.reduce((sum, own) => sum + own, 0) / 400
    const own = teams.find((each: { team: string }) => each.team === who)
    // What is estimated of a match without stop, times how much of it is played; finishes need that it does not stop.
    const [comes, stops] = [1 - own.absent.mean, own.stops.mean]
    const expected =
      comes * ((1 - stops / 2) * own.points.mean + (1 - stops) * own.finishPoints.mean + own.autonomousPoints.mean)
    // Products of means instead of means of products, and 400 of 1,024 draws.
    expect(Math.abs(mean / expected - 1)).toBeLessThan(0.05)
    expect(Math.min(...finishing)).toBeGreaterThanOrEqual(0)
  }
  const same = await members.driveTeam.get(`/api/events/${event.id}/ratings?since=${mark}`)
  expect(same.body).toEqual({ mark, ratings: null })
})

test.runIf(inLongForm)(
  'The pick order for programs is the one of the screen, from what a browser is given, and follows what is called out',
  async () => {
    const { lead, driveTeam, scout } = members
    const at = `/api/events/${event.id}/pick-order`
    // A browser comes to the same from its pack and ratings.
    const pack = (await driveTeam.get(`/api/events/${event.id}/pack`)).body
    const { ratings } = (await driveTeam.get(`/api/events/${event.id}/ratings`)).body
    const asked = await driveTeam.get(`${at}/${pack.own[0]}`)
    expect(asked.status).toBe(200)
    const order = pickOrder.parse(asked.body)
    const prepared = new PreparedPicks({
      key: '',
      game: pack.game,
      level: pack.event.level ?? null,
      robots: pack.robots,
      ratings,
    })
    const { lines } = (await driveTeam.get(address)).body
    const ask = askOf(protocolOf(lines), {
      rules: usualRules(pack.event),
      seeds: seedsBy(
        seeds,
        pack.ranking.rows.map((row: { team: string }) => row.team),
      ),
      us: pack.own[0],
    })
    const { worked, waiting } = prepared.order(ask)
    const own = worked.order.choices.map(({ simulated: _, ...choice }) => ({
      ...choice,
      free: waiting.find(({ team: who }) => who === choice.team)?.chance ?? null,
    }))
    expect(order.team).toBe(pack.own[0])
    expect(order.choices).toEqual(own)
    // Whom a lead has set aside is left out for leads alone, and nobody learns of it elsewhere.
    const teams = (body: { choices: { team: string }[] }) => body.choices.map((each) => each.team)
    const other =
      seeds.find((each) => each !== pack.own[0] && each !== seeds[3] && !JSON.stringify(lines).includes(each)) ??
      seeds[10]!
    const seen = [await lead.get(`${at}/${other}`), await driveTeam.get(`${at}/${other}`)]
    expect(seen.map(({ status, body }) => [status, body.error])).toEqual([
      [200, undefined],
      [200, undefined],
    ])
    expect(teams(seen[0]!.body)).not.toContain(seeds[3])
    expect(teams(seen[1]!.body)).toContain(seeds[3])
    expect((await scout.get(`${at}/${other}`)).status).toBe(403)
    expect((await lead.get(`${at}/12345`)).body.error).toMatchObject({ code: 'malformed', path: ['team'] })
  },
)

test('With too few teams for two alliances an order is refused with a sentence, and looks are worth nothing', async () => {
  const { lead } = members
  const small = { ...event, name: 'Small', teams: event.teams.slice(0, 5), own: seeds[0] }
  const { earlier: _, ...body } = small as typeof small & { earlier?: unknown }
  expect(
    (await lead.send('PUT', '/api/documents/event/small', { base: null, body: { ...body, id: 'small' } })).status,
  ).toBe(200)
  const refused = await lead.get(`/api/events/small/pick-order/${seeds[0]}`)
  expect(refused.body.error).toMatchObject({ code: 'notOffered' })
  const looks = await lead.send('POST', '/api/events/small/looks', { team: seeds[0] })
  expect([looks.status, looks.body.teams]).toEqual([200, []])
})
