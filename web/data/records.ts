import type { Receipt, RecordKind, Row, RowAnswer } from '../../src/model/scouting/types.ts'
import type { StandsPack } from '../codes/standsPack.ts'
import { words } from '../words/catalogue.ts'
import { refusalWords } from '../words/problems.ts'
import { Unreachable } from './api.ts'
import { announce } from './connection.ts'
import { askSignIn } from './signIn.ts'

/** What the server refused, with the code of its answer. */
export class Refused extends Error {
  readonly code: string
  constructor({ code, message }: { code: string; message: string }) {
    super(message)
    this.name = 'Refused'
    this.code = code
  }
}

/** A question to the server's plain addresses, with what it refuses as a sentence. An answer that is not JSON is no answer of ours. */
export async function ask<T>(path: string, init?: RequestInit): Promise<T> {
  let response: Response
  try {
    response = await fetch(path, { cache: 'no-store', ...init })
  } catch {
    announce(false)
    throw new Unreachable()
  }
  announce(response.status < 502)
  if (response.status === 401) askSignIn(true)
  const body = (await response.json().catch(() => null)) as { error?: { code: string; message: string } } | null
  if (body === null) throw new Unreachable()
  if (!response.ok) {
    const code = body.error?.code ?? ''
    throw new Refused({ code, message: body.error ? refusalWords(body.error) : words().shell.unreachable })
  }
  return body as T
}

export const standsPack = (event: string): Promise<StandsPack> => ask(`/api/stands/${encodeURIComponent(event)}`)

export interface Arrived {
  arrival: number
  receivedAt: string
  row: Row
  replaces?: string | null
  team?: string | null
}

/** All records of an event of these kinds, oldest first. */
export async function recordsOf(event: string, kinds: readonly RecordKind[]): Promise<Arrived[]> {
  const found: Arrived[] = []
  // Twenty photos are 5 MB.
  const limit = kinds.includes('photo') ? '&limit=20' : ''
  for (let after: number | null = 0; after !== null; ) {
    const path: string = `/api/records?event=${encodeURIComponent(event)}&kinds=${kinds.join()}&after=${after}${limit}`
    const { records, next }: { records: Arrived[]; next: number | null } = await ask(path)
    found.push(...records)
    after = records.length > 0 ? next : null
  }
  return found
}

/** Rows of one request at most, and letters: the server reads 200 and 2 MB. */
const [mostRows, mostLetters] = [200, 1_000_000]

function batches(rows: readonly Row[]): Row[][] {
  const found: Row[][] = []
  let letters = 0
  for (const row of rows) {
    const own = JSON.stringify(row).length
    const last = found.at(-1)
    if (!last || last.length >= mostRows || letters + own > mostLetters) {
      found.push([row])
      letters = own
    } else {
      last.push(row)
      letters += own
    }
  }
  return found
}

/** Hands rows to the server, whoever recorded them. The answers in the order of the rows. `unsent`: what else is kept here. */
export async function handIn(device: string, rows: readonly Row[], unsent = 0): Promise<RowAnswer[]> {
  const answers: RowAnswer[] = []
  for (const batch of batches(rows)) {
    const body = JSON.stringify({ device, unsent, rows: batch })
    const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body }
    const answer = await ask<{ answers: RowAnswer[]; receipt: Receipt }>('/api/records', init)
    answers.push(...answer.answers)
  }
  return answers
}
