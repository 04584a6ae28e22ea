import type { TransactionClient } from './generated/internal/prismaNamespace.ts'
import { type DocumentKey, readDocument } from './read.ts'
import type { SaveOutcome, SaveRequest, StoredDocument } from './types.ts'

/**
 * Adds a revision if the edit began from the newest one, and otherwise hands back what both writers need to merge.
 * Saving brings a removed document back: its writer wants to keep it.
 */
export async function save(
  transaction: TransactionClient,
  workspaceId: string,
  request: SaveRequest,
  savedAt: Date,
): Promise<SaveOutcome> {
  const key: DocumentKey = { workspaceId, kind: request.kind, id: request.id }
  const current = await readDocument(transaction, key)
  if (current === null) return { saved: await append(transaction, key, 1, request, savedAt) }
  if (request.base === current.revision)
    return { saved: await append(transaction, key, current.revision + 1, request, savedAt) }
  if (isRepeated(request, current)) return { saved: current }
  const base = request.base === null ? null : await readDocument(transaction, key, request.base)
  return { conflict: { current, base } }
}

/** Thrown inside a transaction to undo what it has done so far. */
export class Refusal extends Error {
  readonly outcome: Extract<SaveOutcome, { conflict: unknown }>
  constructor(outcome: Extract<SaveOutcome, { conflict: unknown }>) {
    super('one of the documents was saved in between')
    this.outcome = outcome
  }
}

/** Saves one after the other; throws a Refusal at the first that is not the newest. */
export async function saveEach(
  transaction: TransactionClient,
  workspaceId: string,
  requests: readonly SaveRequest[],
  savedAt: Date,
): Promise<StoredDocument[]> {
  const saved: StoredDocument[] = []
  for (const request of requests) {
    const outcome = await save(transaction, workspaceId, request, savedAt)
    if ('conflict' in outcome) throw new Refusal(outcome)
    saved.push(outcome.saved)
  }
  return saved
}

/** The same save again, as a writer sends it whose first answer got lost on the way. */
function isRepeated(request: SaveRequest, current: StoredDocument): boolean {
  return (
    (request.base ?? 0) + 1 === current.revision &&
    request.name === current.name &&
    (request.note ?? null) === current.note &&
    JSON.stringify(request.body) === JSON.stringify(current.body)
  )
}

async function append(
  transaction: TransactionClient,
  key: DocumentKey,
  revision: number,
  request: SaveRequest,
  savedAt: Date,
): Promise<StoredDocument> {
  const head = { name: request.name, revision, savedAt, removed: false }
  const body = JSON.stringify(request.body)
  await transaction.document.upsert({
    where: { workspaceId_kind_id: key },
    create: { ...key, ...head },
    update: head,
  })
  const note = request.note ?? null
  await transaction.revision.create({ data: { ...key, revision, name: request.name, body, note, savedAt } })
  return {
    kind: request.kind,
    id: request.id,
    name: request.name,
    revision,
    savedAt: savedAt.toISOString(),
    removed: false,
    body: JSON.parse(body),
    note,
  }
}
