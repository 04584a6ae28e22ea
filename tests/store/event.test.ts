import { describe, expect, test } from 'vitest'
import type { Assignment } from '../../src/model/scouting/types.ts'
import type { By } from '../../src/store/event/types.ts'
import { onPostgresql } from '../engines.ts'
import { match, result } from '../model/event/matches.ts'
import { scratchStore } from './scratch.ts'

const by: By = { person: null, device: null }
const event = 'harbour-days'
const put = [match(1, 'A B C', 'D E F'), match(2, 'F E D', 'C B A')]

/** A workspace with two matches, another one, and a way to make the database refuse something. */
async function opened() {
  const { store, database } = await scratchStore()
  const { sql } = database
  const of = async (name: string) => store.workspace(await store.ensureWorkspace(name))
  const [team, other] = [await of('team'), await of('other')]
  const { mark } = await team.events.matches(event)
  await team.events.edit(event, { put, remove: [], mark, by })
  /** From now on each such row is refused, as by a disk that fails in the middle of a change. */
  const refuse = (table: string, when = 'TRUE') =>
    sql(
      onPostgresql()
        ? `CREATE FUNCTION refuse() RETURNS trigger AS $$ BEGIN RAISE 'refused'; END $$ LANGUAGE plpgsql;
          CREATE TRIGGER refused BEFORE INSERT ON "${table}" FOR EACH ROW WHEN (${when}) EXECUTE FUNCTION refuse()`
        : `CREATE TRIGGER refused BEFORE INSERT ON "${table}" WHEN ${when} BEGIN SELECT RAISE(ABORT, 'refused'); END`,
    )
  const allow = (table: string) =>
    sql(onPostgresql() ? `DROP TRIGGER refused ON "${table}"; DROP FUNCTION refuse` : 'DROP TRIGGER refused')
  const audits = async () => {
    const ours = `(SELECT "id" FROM "Workspace" WHERE "name" = 'team')`
    const [row] = await sql(`SELECT count(*) AS "count" FROM "AuditEntry" WHERE "workspaceId" = ${ours}`)
    return Number(row!['count'])
  }
  const everything = async () => ({
    matches: await team.events.matches(event),
    results: await team.events.results(event),
    assignments: await team.events.assignments(event),
    audit: await audits(),
  })
  return { team, other, refuse, allow, everything }
}

const seat = (of: string, alliance: 'red' | 'blue', position: 1 | 2 | 3, person: string | null): Assignment => ({
  match: of,
  seat: { alliance, position },
  person,
})

describe('A change that fails in its middle leaves nothing behind:', () => {
  test('of a schedule', async () => {
    const { team, refuse, allow, everything } = await opened()
    const before = await everything()
    const edit = { put: [match(1, 'A B E', 'D C F'), match(3, 'A E D', 'F C B')], remove: ['q2'], by }
    // The last thing written is who did it.
    await refuse('AuditEntry')
    await expect(team.events.edit(event, { ...edit, mark: before.matches.mark })).rejects.toThrow()
    expect(await everything()).toEqual(before)
    await allow('AuditEntry')
    expect(await team.events.edit(event, { ...edit, mark: before.matches.mark })).toMatchObject({
      applied: { touched: 3, undo: { put: put, remove: ['q3'] } },
    })
  })

  test('of results, and the robots’ states that came with them', async () => {
    const { team, refuse, allow, everything } = await opened()
    const before = await everything()
    const played = 'played' as const
    const states = { red: ['absent' as const, played, played], blue: [played, played, 'disqualified' as const] }
    const entries = [
      { match: 'q1', base: 0, matchRevision: 1, result: result('q1', [40, 30]), states },
      { match: 'q2', base: 0, matchRevision: 1, result: result('q2', [10, 20]) },
    ]
    await refuse('OfficialResult', "NEW.match = 'q2'")
    await expect(team.events.enter(event, entries, by)).rejects.toThrow()
    expect(await everything()).toEqual(before)
    await allow('OfficialResult')
    expect(await team.events.enter(event, entries, by)).toMatchObject({ applied: [{ revision: 1 }, { revision: 1 }] })
    // Of two of which one was looked at too early, neither is entered.
    const late = entries.map((entry) => ({ ...entry, base: entry.match === 'q1' ? 1 : 0, matchRevision: 2 }))
    const then = await everything()
    const changed = late.map((entry) => ({ ...entry, result: result(entry.match, [1, 1]) }))
    expect(await team.events.enter(event, changed, by)).toEqual({ stale: ['q2'] })
    expect(await everything()).toEqual(then)
  })

  test('of seats', async () => {
    const { team, refuse, allow, everything } = await opened()
    const { mark } = await team.events.assignments(event)
    const both = [seat('q1', 'red', 1, 'mia'), seat('q9', 'red', 1, 'mia')]
    const before = await everything()
    // The schedule has no such match.
    await expect(team.events.assign(event, { assignments: both, mark, by })).rejects.toThrow()
    expect(await everything()).toEqual(before)

    const seats = [seat('q1', 'red', 1, 'mia'), seat('q1', 'blue', 2, 'ben')]
    await team.events.assign(event, { assignments: seats, mark, by })
    const taken = { match: 'q1', seat: { alliance: 'red', position: 1 } as const, person: 'ben', by }
    const then = await everything()
    await refuse('AuditEntry')
    await expect(team.events.takeSeat(event, taken)).rejects.toThrow()
    expect(await everything()).toEqual(then)
    await allow('AuditEntry')
    await team.events.takeSeat(event, taken)
    const people = (await team.events.assignments(event)).assignments.map(({ person }) => person)
    expect(people.sort()).toEqual(['ben', 'mia'])
  })
})

test('Seats of a match that was taken out of the schedule are back with the match', async () => {
  const { team } = await opened()
  const seats = [seat('q2', 'blue', 3, 'mia')]
  await team.events.assign(event, { assignments: seats, mark: (await team.events.assignments(event)).mark, by })
  const out = await team.events.edit(event, {
    put: [],
    remove: ['q2'],
    mark: (await team.events.matches(event)).mark,
    by,
  })
  expect((await team.events.assignments(event)).assignments).toEqual([])
  if (!('applied' in out)) throw new Error('not taken out')
  await team.events.edit(event, { ...out.applied.undo, mark: out.applied.mark, by })
  expect((await team.events.assignments(event)).assignments).toEqual(seats)
})

test('An event of the same name in another workspace is another one', async () => {
  const { other, everything } = await opened()
  const before = await everything()
  expect((await other.events.matches(event)).matches).toEqual([])
  const entry = { match: 'q1', base: 0, matchRevision: 1, result: result('q1', [1, 0]) }
  expect(await other.events.enter(event, [entry], by)).toEqual({ stale: ['q1'] })
  const taken = { match: 'q1', seat: { alliance: 'red', position: 1 } as const, person: 'ben', by }
  expect(await other.events.takeSeat(event, taken)).toBeNull()
  const { mark } = await other.events.matches(event)
  await other.events.edit(event, { put: [match(1, 'U V W', 'X Y Z')], remove: ['q2'], mark, by })
  expect((await other.events.matches(event)).matches.map(({ match: { id } }) => id)).toEqual(['q1'])
  expect(await everything()).toEqual(before)
})
