import type { DocumentKind } from '../model/documents/records.ts'
import type { DocumentModel, RevisionModel } from './generated/models.ts'
import type { DocumentSummary, StoredDocument } from './types.ts'

/** Rows of the database as the store's callers know them. */
export function summaryOf(row: DocumentModel): DocumentSummary {
  return {
    kind: row.kind as DocumentKind,
    id: row.id,
    name: row.name,
    revision: row.revision,
    savedAt: row.savedAt.toISOString(),
    removed: row.removed,
  }
}

export function documentOf(document: DocumentModel, revision: RevisionModel): StoredDocument {
  return {
    ...summaryOf(document),
    name: revision.name,
    revision: revision.revision,
    savedAt: revision.savedAt.toISOString(),
    body: JSON.parse(revision.body),
    note: revision.note,
  }
}
