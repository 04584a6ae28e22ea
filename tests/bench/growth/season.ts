import { hashed } from '../../../src/api/records/rows.ts'
import { cellsOf, type EventRecord, type Match, type Row, type Slot } from '../../../src/model/scouting/index.ts'
import type { WorkspaceStore } from '../../../src/store/types.ts'
import { seen } from '../../faults/harbourEvent.ts'
import { agreed } from '../../model/briefing/plans.ts'
import { harbour, ternBest } from '../../model/documents/harbour.ts'
import { forecast } from '../../model/scouting/record/forecasts.ts'

export interface Size {
  events: number
  teams: number
  matches: number
  /** Records of one robot's place in a match. */
  observers: number
}

/** What one team gathers in a season: six events of 60 teams and 100 matches, each robot of a match watched once. */
export const wholeSeason: Size = { events: 6, teams: 60, matches: 100, observers: 1 }

export const eventOf = (number: number): string => `event-${number}`

export const lineId = (number: number): string => `40000000-0000-4000-8000-${String(number).padStart(12, '0')}`

const teamsOf = ({ teams }: Size) => Array.from({ length: teams }, (_, index) => String(90_001 + index))

function matchOf(number: number, size: Size): Match {
  const all = teamsOf(size)
  const slot = (offset: number): Slot => {
    const team = all[((number - 1) * 6 + offset) % all.length]!
    return { team, counts: true, state: 'expected' }
  }
  const red: Match['red'] = [slot(0), slot(1), slot(2)]
  return { id: `q${number}`, phase: 'qualification', number, play: 1, red, blue: [slot(3), slot(4), slot(5)] }
}

/** Rows of one phone that watches the same place in every match; `from` counts phones over all events. */
export function rowsOf(event: string, at: { phone: number; place: number; from?: number }, size: Size): Row[] {
  const { phone, place, from = 1 } = at
  return Array.from({ length: size.matches }, (_, index) => {
    const match = matchOf(from + index, size)
    const { team } = [...match.red, ...match.blue][place]!
    return { ...seen(phone, from + index, { match: match.id, team, scout: `person-${1 + (phone % 20)}` }), event }
  })
}

/** By nobody: what is measured is how much there is. */
const by = { person: null, device: null }

/** Fills a workspace by the ways that its users have. */
export async function fillSeason(team: WorkspaceStore, size: Size): Promise<void> {
  const game = harbour()
  const option = ternBest()
  await team.save({ kind: 'game', id: game.id, name: game.name, body: game, base: null })
  for (const base of [null, 1, 2]) {
    const numbers = Array.from({ length: 20 }, (_, index) => index + 1)
    const named = numbers.map((number) => ({ id: `option-${number}`, name: `Option ${number}` }))
    await team.saveAll(named.map((each) => ({ kind: 'option', ...each, body: option, base })))
  }
  for (let number = 1; number <= size.events; number++) await fillEvent(team, number, size)
  const about = { way: 'Both', places: ['Slip'], load: 1 }
  for (let number = 1; number <= 6; number++) {
    const round = await team.rounds.open({ sheet: 'sheet', way: 'way', leg: 'collect', about })
    for (let device = 1; device <= 4; device++)
      await team.rounds.give(round!.code, `phone-${device}`, { low: 1, likely: 2, high: 3 })
  }
  for (let number = 1; number <= 10; number++) {
    const { id } = await team.jobs.add({ kind: 'match', name: null, request: { seed: number } })
    await team.jobs.end(id, { state: 'done', done: 1, total: 1, result: [number] })
  }
}

async function fillEvent(team: WorkspaceStore, number: number, size: Size): Promise<void> {
  const id = eventOf(number)
  const teams = teamsOf(size).map((each) => ({ team: each }))
  const body: EventRecord = { format: 1, id, name: `Event ${number}`, game: harbour().id, teams }
  await team.save({ kind: 'event', id, name: body.name, body, base: null })
  const { events, records, forecasts, plans, selection } = team
  const matches = Array.from({ length: size.matches }, (_, index) => matchOf(index + 1, size))
  // In parts, since a transaction has a limit in time.
  for (let from = 0; from < matches.length; from += 25) {
    const { mark } = await events.matches(id)
    await events.edit(id, { put: matches.slice(from, from + 25), remove: [], mark, by })
  }
  for (let from = 0; from < matches.length; from += 10) {
    const { mark } = await events.assignments(id)
    const assignments = matches.slice(from, from + 10).flatMap(({ id: match }) =>
      ([1, 2, 3] as const).flatMap((position) => [
        { match, seat: { alliance: 'red' as const, position }, person: `person-${position}` },
        { match, seat: { alliance: 'blue' as const, position }, person: `person-${3 + position}` },
      ]),
    )
    await events.assign(id, { assignments, mark, by })
  }
  const shown = matches.map(({ id: match }) => {
    const { id: _, madeAt: __, ...each } = forecast(match, 0)
    return each
  })
  await forecasts.keep(id, shown)
  for (const { id: match } of matches.slice(0, 10)) await plans.agree(id, agreed(match))
  for (let from = 0; from < matches.length; from += 25) {
    const entries = matches.slice(from, from + 25).map(({ id: match, number: points }) => {
      const result = { match, red: { points: { total: 40 + points } }, blue: { points: { total: 50 } } }
      return { match, base: 0, matchRevision: 1, result }
    })
    await events.enter(id, entries, by)
  }
  for (let place = 0; place < 6 * size.observers; place++) {
    const phone = number * 100 + place
    const rows = rowsOf(id, { phone, place: place % 6 }, size).map((row) => cellsOf(hashed(row)))
    await records.accept({ device: `phone-${phone}`, person: null, session: null, unsent: 0, rows })
  }
  const lines = Array.from({ length: 24 }, (_, index) => ({
    id: lineId(100 * number + index),
    line: { kind: 'aside' as const, team: teams[index % teams.length]!.team, reason: `Reason ${index}` },
  }))
  await selection.add(id, { topic: 'aside', after: null, lines, by, judge: () => null })
}
