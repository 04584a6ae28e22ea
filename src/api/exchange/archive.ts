import type * as z from 'zod'
import type { Path, Problem } from '../../model/errors.ts'
import type { BringReport, EventContents, WrittenContents } from '../../model/event/archive/index.ts'
import { StorageFull } from '../../store/index.ts'
import { problemsOf } from '../contracts/index.ts'
import { ApiError, malformed } from '../errors.ts'
import { byOf, refusal } from '../event/reading.ts'
import type { Context } from '../trpc.ts'
import { checkContents, hashedRows, problem } from './checks.ts'
import { archiveHead, eventContents, keptRecord, mostRecords } from './contracts.ts'
import { contentsHash, inLumps, piecesOf, unhurried } from './pieces.ts'

/** Problems that are told at once: a file can be wrong in each of its lines. */
const mostTold = 200

/** Refuses a file, and says everywhere it is asked what is wrong with it, plain HTTP included. */
export function refuseFile(problems: readonly Problem[]): void {
  if (problems.length === 0) return
  const told = problems.slice(0, mostTold)
  throw new ApiError({ ...malformed(told), details: { problems: told, found: problems.length } })
}

export async function contentsOf({ workspace }: Context, event: string): Promise<EventContents> {
  const contents = await workspace.exchange.contents(event)
  const document = contents && (await workspace.get('event', event))
  if (!contents || document?.removed !== false)
    throw refusal('notFound', { code: 'noEvent', parts: { id: event } }, ['event'])
  return contents
}

function written({ forecasts, selection, ...rest }: EventContents): WrittenContents {
  return { ...rest, ...(forecasts.length > 0 && { forecasts }), ...(selection.length > 0 && { selection }) }
}

export async function archiveOf(ctx: Context, event: string) {
  const contents = written(await contentsOf(ctx, event))
  return { format: 1 as const, archive: 'event' as const, hash: await contentsHash({ ...contents }), contents }
}

/** An archive's text, in lumps. */
export function* archiveText({ hash, contents }: Awaited<ReturnType<typeof archiveOf>>): Generator<string> {
  yield `{"format":1,"archive":"event","hash":"${hash}","contents":`
  yield* inLumps(piecesOf({ ...contents }))
  yield '}\n'
}

function checked<Kind extends z.ZodType>(contract: Kind, value: unknown, path: string[]): z.infer<Kind> {
  const read = contract.safeParse(value, { reportInput: true })
  if (!read.success) refuseFile(problemsOf(read.error, path))
  return read.data as z.infer<Kind>
}

/** What an archive holds, if it arrived as it was written. */
export async function readArchive(file: unknown): Promise<EventContents> {
  const { hash, contents } = checked(archiveHead, file, [])
  // Before anything in it is looked at: what is damaged is not to be explained field by field.
  if ((await contentsHash(contents)) !== hash) refuseFile([problem(['hash'], { code: 'damagedFile', parts: {} })])
  return checkedContents(contents, (path) => ['contents', ...path])
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
  return { ...read, forecasts: read.forecasts ?? [], selection: read.selection ?? [], records: kept }
}

/** Brings what a file holds into the workspace, or says what that would change. */
export async function bring(
  ctx: Context,
  contents: EventContents,
  {
    preview,
    kind,
    locate = (path) => path,
  }: { preview: boolean; kind: 'archive' | 'tables'; locate?: (path: Path) => Path },
) {
  const { texts, problems } = await hashedRows(contents)
  const found = [...checkContents(contents), ...problems]
  refuseFile(found.map((each) => ({ ...each, path: locate(each.path) })))
  const { id, name } = contents.event.at(-1)!.body
  const report = await brought(ctx, { contents, texts }, { preview, kind })
  if (!preview)
    for (const what of [
      'schedule',
      'results',
      'assignments',
      'records',
      'quarantine',
      'forecasts',
      'selection',
    ] as const)
      ctx.tell({ event: id, what })
  return { event: { id, name }, ...report }
}

async function brought(
  ctx: Context,
  file: Parameters<Context['workspace']['exchange']['bring']>[0],
  as: { preview: boolean; kind: 'archive' | 'tables' },
): Promise<BringReport> {
  try {
    return await ctx.workspace.exchange.bring(file, { ...as, by: byOf(ctx) })
  } catch (error) {
    if (!(error instanceof StorageFull)) throw error
    const message = 'The server’s disk is full. Nothing of the file was taken'
    throw new ApiError({ code: 'storageFull', message, retryAfter: 60 })
  }
}
