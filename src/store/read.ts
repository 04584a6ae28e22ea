import type { TransactionClient } from './generated/internal/prismaNamespace.ts'
import { documentOf } from './rows.ts'
import type { StoredDocument } from './types.ts'

export interface DocumentKey {
  workspaceId: string
  kind: string
  id: string
}

/** One document at a revision, the newest where none is named; null where there is none. */
export async function readDocument(
  client: Pick<TransactionClient, 'document' | 'revision'>,
  key: DocumentKey,
  revision?: number,
): Promise<StoredDocument | null> {
  const document = await client.document.findUnique({ where: { workspaceId_kind_id: key } })
  if (document === null) return null
  const row = await client.revision.findUnique({
    where: { workspaceId_kind_id_revision: { ...key, revision: revision ?? document.revision } },
  })
  return row === null ? null : documentOf(document, row)
}
