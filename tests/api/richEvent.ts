import { onlyWorkspace } from '../../src/app.ts'
import type { Match, Row, Slot } from '../../src/model/scouting/index.ts'
import { event, eventId, qualification, seen, teams, uuidOf } from '../faults/harbourEvent.ts'
import { agreed } from '../model/briefing/plans.ts'
import { harbour } from '../model/documents/harbour.ts'
import { forecast } from '../model/scouting/record/forecasts.ts'
import type { Server } from './server.ts'
import { claim, join, type Member } from './team.ts'

const surrogate = (slot: Slot): Slot => ({ ...slot, counts: false })

/** Qualification 1 with a surrogate, its replay, and one that is taken out again. */
const matches = (): Match[] => {
  const first = qualification(1)
  const [one, two, three] = first.red
  const replay: Match = { ...first, id: 'q1-2', play: 2, voids: 'q1', red: [surrogate(one), two, three] }
  return [first, replay, qualification(2), qualification(3)]
}

const side = (total: number) => ({ points: { total, autonomous: 7.5 }, bonuses: ['busy'], pieces: { pier: 4 } })

/** Odd letters in a note: quotes, line ends, what a spreadsheet takes for a formula. */
export const oddNote = '="2"\r\nhung, then "fell" – über Bord;\t\'tis so'

/** What a claimed server has to send back again: `send` as the scout or as the lead. */
export interface Rich {
  lead: Member
  scout: Member
}

/**
 * An event with what is hard to carry over: a replay, a surrogate, a match taken out, results corrected and taken back, seats, a
 * rehearsal, records of each kind, a correction, a choice, rows kept apart, one of them decided over, two forecasts of a match, what was agreed for
 * it, and a selection.
 */
export async function richEvent(server: Server): Promise<Rich> {
  const lead = await claim(server)
  const scout = await join(server, lead, { role: 'scout', nickname: 'Bo of the stands' })
  const ok = async (who: Member, method: string, path: string, body: unknown) => {
    const answer = await who.send(method, path, body)
    if (answer.status !== 200) throw new Error(`${method} ${path}: ${JSON.stringify(answer.body)}`)
    return answer.body
  }
  const at = (path: string) => `/api/events/${eventId}/${path}`
  const game = harbour()
  await ok(lead, 'PUT', `/api/documents/game/${game.id}`, { base: null, body: game })
  await ok(lead, 'PUT', `/api/documents/game/${game.id}`, { base: 1, body: { ...game, name: 'Harbour, corrected' } })
  await ok(lead, 'PUT', `/api/documents/event/${eventId}`, { base: null, body: event })
  const playoff = { format: 'double' as const, alliances: 4, size: 4 }
  // The earlier event is not here: it counts for nothing, and goes along all the same.
  const earlier = { event: 'trials', discount: 0.4, changed: [teams[0]] }
  const lessons = 'Spare wheels\n“Talk” to the drivers; earlier'
  // Of a match that is taken out again too: what is noted stays.
  const drivers = ['q1', 'q3'].map((match, index) => ({
    match,
    team: teams[index]!,
    driver: ['Ada', '=Bo "B"'][index]!,
  }))
  const second = {
    ...event,
    drivers,
    name: 'Open Water “Cup”',
    startsOn: '2031-02-28',
    halfLife: 4,
    playoff,
    earlier,
    lessons,
  }
  await ok(lead, 'PUT', `/api/documents/event/${eventId}`, { base: 1, note: 'Dates', body: second })

  const { mark } = (await lead.get(at('matches'))).body
  const put = await ok(lead, 'PUT', at('matches'), { matches: matches(), mark })
  await ok(lead, 'PUT', at('matches'), { matches: [], remove: ['q3'], mark: put.mark })
  const enter = (match: string, base: number, total: number | null) => {
    const result = total === null ? null : { match, red: side(total), blue: side(12) }
    return ok(lead, 'PUT', at('results'), { results: [{ match, base, matchRevision: 1, result }] })
  }
  await enter('q1', 0, 40)
  await enter('q1-2', 0, 41)
  await enter('q1-2', 1, 44.5)
  await enter('q2', 0, 30)
  await enter('q2', 1, null)
  const assignments = [{ match: 'q2', seat: { alliance: 'red', position: 1 }, person: scout.id }]
  await ok(lead, 'PUT', at('assignments'), { assignments, mark: (await lead.get(at('assignments'))).body.mark })
  const drill = await ok(lead, 'POST', at('drills'), {})
  await ok(lead, 'POST', at(`drills/${drill.id}/end`), {})

  const seat = { alliance: 'red' as const, position: 1 as const }
  const ofScout = { scout: scout.id }
  const observed = [
    { ...seen(1, 1, { ...ofScout, match: 'q1', team: teams[0]!, note: oddNote, identifiedBy: 'position' }), seat },
    seen(1, 2, { ...ofScout, match: 'q1-2', team: teams[0]!, finish: { attempted: null, achieved: null } }),
    seen(1, 3, { ...ofScout, match: 'q1-2', team: teams[0]!, timeline: [], counts: [] }),
    seen(1, 4, { ...ofScout, match: null, origin: 'practice', driver: 'Ada', robotRevision: 3, game: 2 }),
  ]
  const photo = uuidOf(1, 11)
  const way = (sequence: number) => {
    const made = '2031-02-28T09:00+01:00'
    return { id: uuidOf(1, sequence), event: eventId, device: 'phone-1', sequence, scout: scout.id, made }
  }
  const further: Row[] = [
    { ...way(11), kind: 'photo', body: { id: photo, type: 'image/png', data: 'iVBORw0KGgo=' } },
    {
      ...way(12),
      kind: 'visit',
      body: {
        team: teams[0]!,
        at: '2031-02-28T08:00Z',
        claims: { goals: { pier: 12, mast: 2.5 }, cycle: 7.25, routines: ['a;b', 'c'], size: '-80 cm', mass: 51.3 },
        photos: [photo],
        note: '',
      },
    },
    { ...way(13), kind: 'ranking', body: { match: 'q1', scout: scout.id, by: 'driving', order: teams.slice(0, 3) } },
    { ...way(14), kind: 'change', body: { team: teams[1]!, afterMatch: null, note: '@new intake' } },
    { ...way(15), kind: 'drill', body: { drill: drill.id } },
  ]
  const send = (rows: unknown[]) => ok(scout, 'POST', '/api/records', { device: 'phone-1', unsent: 0, rows })
  await send(observed)
  await send(further)
  // Same ids, other content: one is decided over, one waits.
  const other = (row: Row) => ({ ...row, made: '2031-02-28T10:00:00.000Z' })
  await send([other(observed[1]!), other(observed[2]!)])
  const [first] = (await lead.get(at('quarantine'))).body
  await ok(lead, 'POST', at('quarantine'), { arrival: first.arrival, resolution: 'kept' })
  await ok(lead, 'POST', at('corrections'), {
    record: observed[0]!.id,
    changes: { fouls: { minor: 1, major: 0 } },
    reason: 'Seen on video',
  })
  await ok(lead, 'POST', at('choices'), { match: 'q1-2', team: teams[0], record: observed[1]!.id, reason: 'Closer' })
  const { forecasts, plans } = server.store.workspace(await server.store.ensureWorkspace(onlyWorkspace))
  const { id: _, madeAt: __, ...shown } = forecast('q2', 0)
  await forecasts.keep(eventId, [shown])
  await forecasts.keep(eventId, [{ ...shown, from: 'b'.repeat(64) }])
  await plans.agree(eventId, agreed('q2'))
  const line = (id: string, of: object) => ({ id: `40000000-0000-4000-8000-00000000000${id}`, line: of })
  const rules = { alliances: 2, size: 3, serpentine: true, captainsInvitable: true, afterDeclining: 'captain' }
  await ok(lead, 'POST', at('selection'), {
    after: null,
    lines: [
      line('1', { kind: 'begins', rules, seeds: teams }),
      line('2', { kind: 'called', step: { kind: 'declines', team: teams[1] } }),
    ],
  })
  await ok(lead, 'POST', at('selection/notes'), {
    after: null,
    lines: [line('3', { kind: 'aside', team: teams[2], reason: '@their battery' })],
  })
  return { lead, scout }
}
