import type { RecordCount, ScheduleEdit } from '../../model/event/changes.ts'
import type { Alliance, Assignment, Observation, Position, Seat } from '../../model/scouting/types.ts'
import type { PrismaClient } from '../generated/client.ts'
import { assign, readAssignments, takeSeat } from './assignments.ts'
import { readMarks } from './marks.ts'
import { enterResults, readHistory, readResults, readStanding, StaleResults } from './results.ts'
import { editSchedule, readSchedule, type Scope } from './schedule.ts'
import type { By, EventStore, ResultEntry, ResultOutcome } from './types.ts'

/** The events of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseEvents implements EventStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  marks(event: string, newest: number) {
    return readMarks(this.#client, this.#scope(event), newest)
  }

  matches(event: string) {
    return readSchedule(this.#client, this.#scope(event))
  }

  edit(event: string, edit: ScheduleEdit & { mark: string; by: By }) {
    return this.#client.$transaction((transaction) =>
      editSchedule(transaction, this.#scope(event), { ...edit, now: this.#now() }),
    )
  }

  results(event: string) {
    return readResults(this.#client, this.#scope(event))
  }

  standing(event: string) {
    return readStanding(this.#client, this.#scope(event))
  }

  resultHistory(event: string, match: string) {
    return readHistory(this.#client, this.#scope(event), match)
  }

  async enter(event: string, entries: readonly ResultEntry[], by: By): Promise<ResultOutcome> {
    try {
      return await this.#client.$transaction((transaction) =>
        enterResults(transaction, this.#scope(event), { entries, by, now: this.#now() }),
      )
    } catch (error) {
      if (error instanceof StaleResults) return { stale: error.matches }
      throw error
    }
  }

  assignments(event: string) {
    return readAssignments(this.#client, this.#scope(event))
  }

  assign(event: string, of: { assignments: readonly Assignment[]; mark: string; by: By }) {
    return this.#client.$transaction((transaction) =>
      assign(transaction, this.#scope(event), { ...of, now: this.#now() }),
    )
  }

  takeSeat(event: string, of: { match: string; seat: Seat; person: string; by: By }) {
    return this.#client.$transaction((transaction) =>
      takeSeat(transaction, this.#scope(event), { ...of, now: this.#now() }),
    )
  }

  async recordCounts(event: string): Promise<RecordCount[]> {
    const groups = await this.#client.fieldRecord.groupBy({
      by: ['match', 'alliance', 'position', 'team', 'identifiedBy'],
      where: { ...this.#scope(event), kind: 'observation', match: { not: null } },
      _count: true,
    })
    return groups.map(({ match, alliance, position, team, identifiedBy, _count }) => ({
      match: match!,
      seat: alliance === null ? null : { alliance: alliance as Alliance, position: position as Position },
      team: team ?? '',
      identifiedBy: identifiedBy as Observation['identifiedBy'],
      count: _count,
    }))
  }

  #scope(event: string): Scope {
    return { workspaceId: this.#workspaceId, event }
  }
}
