import type { DecisionRecord } from '../../../model/documents/records.ts'
import type { TransactionClient } from '../../generated/internal/prismaNamespace.ts'
import { folded } from '../rows.ts'
import type { TypedName } from '../types.ts'

const kind = 'decision' as const

/** A decision record in which nobody of that name stands any more as who agreed or objected; null: it was not there. */
function withoutName(decision: DecisionRecord, nickname: string, stranger: string): DecisionRecord | null {
  const isNamed = (who: string | undefined) => who !== undefined && folded(who) === folded(nickname)
  // Older ones may lack either.
  const { agreed = [], objections = [] } = decision as Partial<DecisionRecord>
  if (![...agreed, ...objections].some(({ who }) => isNamed(who))) return null
  const without = <Of extends { who?: string }>(each: Of): Of => (isNamed(each.who) ? { ...each, who: stranger } : each)
  return { ...decision, agreed: agreed.map(without), objections: objections.map(without) }
}

async function namingRevisions(client: TransactionClient, workspaceId: string, nickname: string, stranger = '–') {
  const rows = await client.revision.findMany({
    where: { workspaceId, kind },
    orderBy: [{ id: 'asc' }, { revision: 'asc' }],
  })
  return rows.flatMap(({ id, name, revision, body }) => {
    const next = withoutName(JSON.parse(body) as DecisionRecord, nickname, stranger)
    return next ? [{ kind, id, name, revision, next }] : []
  })
}

/** Revisions of decision records in which somebody of that name stands. */
export async function decisionsNaming(
  client: TransactionClient,
  workspaceId: string,
  nickname: string,
): Promise<TypedName[]> {
  return (await namingRevisions(client, workspaceId, nickname)).map(({ next: _, ...named }) => named)
}

/** Puts another word in the place of that name, in every revision. Answers how many there were. */
export async function takeNameOut(
  client: TransactionClient,
  workspaceId: string,
  { nickname, stranger }: { nickname: string; stranger: string },
): Promise<number> {
  const found = await namingRevisions(client, workspaceId, nickname, stranger)
  for (const { id, revision, next } of found) {
    await client.revision.update({
      where: { workspaceId_kind_id_revision: { workspaceId, kind, id, revision } },
      data: { body: JSON.stringify(next) },
    })
  }
  return found.length
}
