import { type KeptLine, type PickLine, topicOf } from '../../model/picks/protocol/index.ts'
import type { Scope } from '../event/schedule.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'

export const lineRow = (scope: Scope, { id, line, at, person }: KeptLine) => ({
  ...{ ...scope, id, person },
  topic: topicOf(line),
  body: JSON.stringify(line),
  writtenAt: new Date(at),
})

/** In the order in which they were written. */
export async function readLines(client: Pick<TransactionClient, 'selectionLine'>, scope: Scope): Promise<KeptLine[]> {
  const rows = await client.selectionLine.findMany({ where: { ...scope }, orderBy: { sequence: 'asc' } })
  return rows.map(({ id, body, writtenAt, person }) => ({
    ...{ id, person },
    line: JSON.parse(body) as PickLine,
    at: writtenAt.toISOString(),
  }))
}
