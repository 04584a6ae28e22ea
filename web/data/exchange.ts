import type { Problem } from '../../src/model/errors.ts'
import type { BringReport } from '../../src/model/event/archive/index.ts'
import type { AnySaid } from '../../src/model/said.ts'
import { words } from '../words/catalogue.ts'
import { problemsInWords, refusalWords } from '../words/problems.ts'
import { Unreachable } from './api.ts'
import { announce } from './connection.ts'
import { askSignIn } from './signIn.ts'

export type Brought = BringReport & { event: { id: string; name: string } }

/** Why the server did not take a file, with every place where something is wrong. */
export class FileRefused extends Error {
  readonly problems: readonly Problem[]
  /** How many there are; not all of them are told. */
  readonly found: number
  constructor(message: string, problems: readonly Problem[], found: number) {
    super(message)
    this.problems = problems
    this.found = found
  }
}

interface Refusal {
  error?: { code: string; message: string }
  said?: AnySaid
  problems?: Problem[]
  found?: number
}

async function asked(path: string, init?: RequestInit): Promise<Response> {
  let response: Response
  try {
    response = await fetch(path, { cache: 'no-store', ...init })
  } catch {
    announce(false)
    throw new Unreachable()
  }
  announce(response.status < 502)
  if (response.status === 401) askSignIn(true)
  if (response.ok) return response
  const refusal = (await response.json().catch(() => null)) as Refusal | null
  if (!refusal?.error) throw new Unreachable()
  const { problems = [], found = problems.length } = refusal
  throw new FileRefused(refusalWords({ ...refusal.error, problems }), problemsInWords(problems), found)
}

const at = (event: string): string => `/api/events/${encodeURIComponent(event)}`

export interface KeptFile {
  name: string
  content: Blob
}

async function kept(path: string, name: string): Promise<KeptFile> {
  const response = await asked(path)
  const named = /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1]
  return { name: named ?? name, content: await response.blob() }
}

export const archiveFile = (event: string): Promise<KeptFile> => kept(`${at(event)}/archive`, `${event}.json`)

export const tablesFile = (event: string, { mark, photos }: { mark: boolean; photos: boolean }): Promise<KeptFile> =>
  kept(`${at(event)}/tables?mark=${mark}&photos=${photos}`, `${event}.zip`)

/** What the server reads of a file at most (bytes). */
const most = 200_000_000

/** Brings a file in, or asks what that would change. Which of the two kinds it is says its beginning. */
export async function bringFile(file: File, preview: boolean): Promise<Brought> {
  if (file.size > most) throw new FileRefused(words().exchange.tooLarge(most / 1_000_000), [], 0)
  const begin = new Uint8Array(await file.slice(0, 2).arrayBuffer())
  const isZip = begin[0] === 0x50 && begin[1] === 0x4b
  const [part, type] = isZip ? ['tables', 'application/zip'] : ['archive', 'application/json']
  const init = { method: 'POST', headers: { 'content-type': type }, body: file }
  const answer = await asked(`/api/events/${part}?preview=${preview}`, init)
  const brought = (await answer.json().catch(() => null)) as Brought | null
  // A captive portal answers with a page.
  if (!Array.isArray(brought?.parts)) throw new Unreachable()
  return brought
}
