import { createTRPCClient, httpBatchLink, TRPCClientError } from '@trpc/client'
import type { AppRouter } from '../../src/api/index.ts'
import type { QuickLegName } from '../../src/model/documents/quickSheet.ts'
import type { DocumentKind } from '../../src/model/documents/records.ts'
import type { Problem } from '../../src/model/errors.ts'
import type { AnySaid } from '../../src/model/said.ts'
import type { Guess } from '../../src/model/sheet/index.ts'
import type {
  DocumentSummary,
  KeptRound,
  RevisionSummary,
  Round,
  SaveOutcome,
  SaveRequest,
  StoredDocument,
} from '../../src/store/types.ts'
import { words } from '../words/catalogue.ts'
import { problemsInWords, refusalWords } from '../words/problems.ts'
import { announce } from './connection.ts'
import { askSignIn } from './signIn.ts'

interface Failure {
  code: string
  message: string
  said?: AnySaid
  problems?: Problem[]
}

/** The server could not be reached at all. */
export class Unreachable extends Error {
  constructor() {
    super(words().shell.unreachable)
    this.name = 'Unreachable'
  }
}

const watched: typeof fetch = async (input, init) => {
  try {
    const response = await fetch(input, init)
    announce(response.status < 502)
    return response
  } catch (error) {
    if (!(error instanceof DOMException && error.name === 'AbortError')) announce(false)
    throw error
  }
}

// The names of all questions of a batch stand in its address, for which the server has 300 letters.
export const client = createTRPCClient<AppRouter>({
  links: [httpBatchLink({ url: '/trpc', fetch: watched, maxItems: 10 })],
})

/** What the server said of a refusal. */
const failureIn = (error: unknown): Failure | null =>
  error instanceof TRPCClientError ? ((error.data as { failure?: Failure } | null)?.failure ?? null) : null

/** By what name the server refused something; null: it was something else. */
export const codeOf = (error: unknown): string | null => failureIn(error)?.code ?? null

/** Turns what the transport throws into a sentence for the person. */
export async function said<T>(call: Promise<T>): Promise<T> {
  try {
    return await call
  } catch (error) {
    if (error instanceof TRPCClientError && !error.data) throw new Unreachable()
    const failure = failureIn(error)
    // In a batch one question alone may need a session.
    if (failure?.said?.code === 'noSession') askSignIn(true)
    if (failure) (error as Error).message = refusalWords(failure)
    throw error
  }
}

export const listDocuments = (kind: DocumentKind, withRemoved = false): Promise<DocumentSummary[]> =>
  said(client.documents.list.query({ kind, withRemoved }))

export const getDocument = (kind: DocumentKind, id: string, revision?: number): Promise<StoredDocument> =>
  said(client.documents.get.query({ kind, id, revision }))

export const listRevisions = (kind: DocumentKind, id: string): Promise<RevisionSummary[]> =>
  said(client.documents.revisions.query({ kind, id }))

export const saveDocument = (request: SaveRequest): Promise<SaveOutcome> => said(client.documents.save.mutate(request))

export const restoreDocument = (kind: DocumentKind, id: string, revision: number, base: number): Promise<SaveOutcome> =>
  said(client.documents.restore.mutate({ kind, id, revision, base }))

/** Keeps changed rules as a reading of the game; the rules as they were stay the newest. */
export const saveReading = (asked: {
  id: string
  base: number
  body: unknown
  reading: { id: string; name: string; rule: string }
}): Promise<
  { saved: { reading: StoredDocument; game: StoredDocument } } | Extract<SaveOutcome, { conflict: unknown }>
> => said(client.documents.saveReading.mutate(asked))

export const removeDocument = (kind: DocumentKind, id: string, undo = false): Promise<unknown> =>
  said(client.documents.remove.mutate({ kind, id, undo }))

export const openRound = (subject: {
  sheet: string
  way: string
  leg: QuickLegName
  closingKey: string
}): Promise<Round> => said(client.guesses.open.mutate(subject))

export const arriveIn = (code: string, device: string): Promise<Round> =>
  said(client.guesses.arrive.mutate({ code, device }))

export const listRounds = (sheet: string): Promise<Round[]> => said(client.guesses.list.query({ sheet }))

/** A round; its guesses are null while it is open. */
export const getRound = (code: string): Promise<Round & { guesses: Guess[] | null }> =>
  said(client.guesses.get.query({ code }))

export const giveGuess = (code: string, device: string, guess: Guess): Promise<{ count: number; corrected: boolean }> =>
  said(client.guesses.give.mutate({ code, device, guess }))

export const closeRound = (
  code: string,
  by: { closingKey?: string | undefined; anyway?: boolean },
): Promise<Round & { guesses: Guess[] | null }> => said(client.guesses.close.mutate({ code, ...by }))

export const removeRound = (code: string, undo: boolean): Promise<unknown> =>
  said(client.guesses.remove.mutate({ code, undo }))

/** The closed rounds of a sheet as a file holds them. */
export const roundsFile = (sheet: string): Promise<{ rounds: KeptRound[] }> =>
  said(client.guesses.file.query({ sheet }))

/** Adds a file's rounds to a sheet; the server says what is wrong with the file. */
export const bringRounds = (sheet: string, file: unknown): Promise<{ added: number; already: number }> =>
  said(client.guesses.bring.mutate({ sheet, file: file as never }))

export const getReach = (): Promise<{ onlyHere: boolean; addresses: string[] }> => said(client.guesses.reach.query({}))

/** What is wrong with a document, saved or not; `shape` says whether it has the form of its kind at all. */
export async function checkDocument(
  kind: DocumentKind,
  body: unknown,
): Promise<{ shape: boolean; problems: Problem[] }> {
  const { shape, problems } = await said(client.documents.check.mutate({ kind, body }))
  return { shape, problems: problemsInWords(problems as Problem[]) }
}

/** All that the server found wrong with a document, with the path of each; none where it was something else. */
export function problemsOf(error: unknown): readonly Problem[] {
  return problemsInWords(failureIn(error)?.problems ?? [])
}
