import type { TransactionClient } from '../../generated/internal/prismaNamespace.ts'
import { folded } from '../rows.ts'
import type { TypedName } from '../types.ts'

/** Kinds of documents in which names are typed, and the field that holds one, wherever it stands. */
const fields: { readonly [kind in TypedName['kind']]: string } = {
  // Who agreed, who objected, and whose numbers its snapshot holds.
  decision: 'who',
  // Whose numbers take the place of computed ones.
  comparison: 'who',
  // Who drove in a match.
  event: 'driver',
}

const kinds = Object.keys(fields) as TypedName['kind'][]

/** The same with another word in the name's place; the very same object where it does not stand there. */
export function withoutName<Of>(value: Of, of: { field: string; nickname: string; stranger: string }): Of {
  if (typeof value !== 'object' || value === null) return value
  const { field, nickname, stranger } = of
  const isName = (key: string, each: unknown) =>
    key === field && typeof each === 'string' && folded(each) === folded(nickname)
  let changed = false
  const next = Object.entries(value).map(([key, each]) => {
    const other = isName(key, each) ? stranger : withoutName(each, of)
    changed ||= other !== each
    return [key, other] as const
  })
  if (!changed) return value
  return (Array.isArray(value) ? next.map(([, each]) => each) : Object.fromEntries(next)) as Of
}

async function namingRevisions(client: TransactionClient, workspaceId: string, nickname: string, stranger = '–') {
  const found = []
  for (const kind of kinds) {
    const field = fields[kind]
    const rows = await client.revision.findMany({
      where: { workspaceId, kind, body: { contains: `"${field}":` } },
      orderBy: [{ id: 'asc' }, { revision: 'asc' }],
    })
    for (const { id, name, revision, body } of rows) {
      const before: unknown = JSON.parse(body)
      const next = withoutName(before, { field, nickname, stranger })
      if (next !== before) found.push({ kind, id, name, revision, next })
    }
  }
  return found
}

/** Revisions of documents in which somebody of that name stands. */
export async function documentsNaming(
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
  for (const { kind, id, revision, next } of found) {
    await client.revision.update({
      where: { workspaceId_kind_id_revision: { workspaceId, kind, id, revision } },
      data: { body: JSON.stringify(next) },
    })
  }
  return found.length
}
