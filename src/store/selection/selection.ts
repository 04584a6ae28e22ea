import { type KeptLine, topicOf } from '../../model/picks/protocol/index.ts'
import type { PrismaClient } from '../generated/client.ts'
import { lineRow, readLines } from './rows.ts'
import type { AddLinesOutcome, LinesToAdd, SelectionStore } from './types.ts'

/** The selections of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseSelection implements SelectionStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  lines(event: string) {
    return readLines(this.#client, { workspaceId: this.#workspaceId, event })
  }

  /** In one transaction with the question what is kept, so that of two who press at once the second is told. */
  add(event: string, { topic, after, lines, by, judge }: LinesToAdd): Promise<AddLinesOutcome> {
    const scope = { workspaceId: this.#workspaceId, event }
    return this.#client.$transaction(async (transaction) => {
      const before = await readLines(transaction, scope)
      const known = new Set(before.map(({ id }) => id))
      // Its answer was lost on the way: whoever asks again is answered alike.
      if (lines.every(({ id }) => known.has(id))) return { kept: before }
      const newest = before.findLast(({ line }) => topicOf(line) === topic)?.id ?? null
      if (newest !== after || lines.some(({ id }) => known.has(id))) return { stale: before }
      const refused = judge(before)
      if (refused) return { refused }
      const at = this.#now().toISOString()
      const fresh = lines.map(({ id, line }): KeptLine => ({ id, line, at, person: by.person }))
      await transaction.selectionLine.createMany({ data: fresh.map((each) => lineRow(scope, each)) })
      return { kept: [...before, ...fresh] }
    })
  }
}
