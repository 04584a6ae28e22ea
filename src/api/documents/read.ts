import type { DocumentKind } from '../../model/documents/index.ts'
import type { StoredDocument, WorkspaceStore } from '../../store/types.ts'
import { ApiError } from '../errors.ts'
import { say } from '../sentences.ts'
import type { Bodies } from './kinds.ts'

/** A stored document with the body of its kind: it was checked against its contract when it was saved. */
export type Stored<Kind extends DocumentKind> = Omit<StoredDocument, 'body'> & { body: Bodies[Kind] }

/** What the store answers, with bodies of a known kind. */
export type Outcome =
  | { saved: Stored<DocumentKind> }
  | { conflict: { current: Stored<DocumentKind>; base: Stored<DocumentKind> | null } }

export interface Place {
  id: string
  revision?: number
}

export async function read<Kind extends DocumentKind>(workspace: WorkspaceStore, kind: Kind, { id, revision }: Place) {
  return (await workspace.get(kind, id, revision)) as Stored<Kind> | null
}

export const missing = (
  kind: DocumentKind,
  { id, revision = null }: Omit<Place, 'revision'> & { revision?: number | null },
) => say({ code: 'noDocument', parts: { kind, id, revision } })

export function notFound(kind: DocumentKind, place: Place): ApiError {
  const path = [place.revision === undefined ? 'id' : 'revision']
  return new ApiError({ code: 'notFound', ...missing(kind, place), path })
}
