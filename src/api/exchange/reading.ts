import type * as z from 'zod'
import type { Path, Problem } from '../../model/errors.ts'
import type { EventContents, WrittenContents } from '../../model/event/archive/index.ts'
import { problemsOf } from '../contracts/index.ts'
import { ApiError, malformed } from '../errors.ts'
import { parsed } from '../http/json.ts'
import { checkContents, hashedRows, problem } from './checks.ts'
import { archiveHead, eventContents, keptRecord, mostRecords } from './contracts.ts'
import { contentsHash, unhurried } from './pieces.ts'

/** What a file holds, looked at, with the text of each record that is kept and hashed. */
export interface FileRead {
  contents: EventContents
  /** Canonical JSON of a row, by its hash. */
  texts: ReadonlyMap<string, string>
}

/** Problems that are told at once: a file can be wrong in each of its lines. */
const mostTold = 200

/** Refuses a file, and says everywhere it is asked what is wrong with it, plain HTTP included. */
export function refuseFile(problems: readonly Problem[]): void {
  if (problems.length === 0) return
  const told = problems.slice(0, mostTold)
  throw new ApiError({ ...malformed(told), details: { problems: told, found: problems.length } })
}

const textOf = (bytes: Uint8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString()

function checked<Kind extends z.ZodType>(contract: Kind, value: unknown, path: string[]): z.infer<Kind> {
  const read = contract.safeParse(value, { reportInput: true })
  if (!read.success) refuseFile(problemsOf(read.error, path))
  return read.data as z.infer<Kind>
}

/** What an archive holds, if it arrived as it was written. @param file its bytes, or what they say */
export async function readArchive(file: unknown): Promise<FileRead> {
  const { hash, contents } = checked(archiveHead, file instanceof Uint8Array ? parsed(textOf(file)) : file, [])
  // Before anything in it is looked at: what is damaged is not to be explained field by field.
  if ((await contentsHash(contents)) !== hash) refuseFile([problem(['hash'], { code: 'damagedFile', parts: {} })])
  return prepared(await checkedContents(contents, (path) => ['contents', ...path]))
}

/** Contents whose records are looked at one by one, so that others are answered meanwhile. @param place where in the file a path stands */
export async function checkedContents(
  contents: { readonly [part: string]: unknown },
  place: (path: Path) => Path,
): Promise<EventContents> {
  const records = contents['records']
  const many = Array.isArray(records) && records.length <= mostRecords ? records : null
  const problems: Problem[] = []
  const told = (error: z.core.$ZodError, before: (string | number)[] = []) => {
    for (const each of problemsOf(error)) problems.push({ ...each, path: place([...before, ...each.path]) })
  }
  const rest = eventContents.safeParse(many ? { ...contents, records: [] } : contents, { reportInput: true })
  if (!rest.success) told(rest.error)
  const kept: EventContents['records'] = []
  await unhurried(many ?? [], (record, index) => {
    const read = keptRecord.safeParse(record, { reportInput: true })
    if (read.success) kept.push(read.data as EventContents['records'][number])
    else told(read.error, ['records', index])
  })
  refuseFile(problems)
  const read = rest.data as WrittenContents
  const { forecasts = [], plans = [], selection = [] } = read
  return { ...read, forecasts, plans, selection, records: kept }
}

/** With what no contract sees: what must belong together. @param locate where in the file a path stands */
export async function prepared(
  contents: EventContents,
  locate: (path: Path) => Path = (path) => path,
): Promise<FileRead> {
  const { texts, problems } = await hashedRows(contents)
  const found = [...checkContents(contents), ...problems]
  refuseFile(found.map((each) => ({ ...each, path: locate(each.path) })))
  return { contents, texts }
}
