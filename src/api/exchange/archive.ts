import type * as z from 'zod'
import type { Path, Problem } from '../../model/errors.ts'
import type { BringReport, EventContents } from '../../model/event/archive/index.ts'
import { canonicalJson } from '../../model/scouting/index.ts'
import { StorageFull } from '../../store/index.ts'
import { problemsOf } from '../contracts/index.ts'
import { ApiError, malformed } from '../errors.ts'
import { byOf, refusal } from '../event/reading.ts'
import { hashOf } from '../records/rows.ts'
import type { Context } from '../trpc.ts'
import { checkContents, hashedRows, problem } from './checks.ts'
import { archiveHead, eventContents } from './contracts.ts'

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

export async function archiveOf(ctx: Context, event: string) {
  const contents = await contentsOf(ctx, event)
  return { format: 1 as const, archive: 'event' as const, hash: hashOf(canonicalJson(contents)), contents }
}

function checked<Kind extends z.ZodType>(contract: Kind, value: unknown, path: string[]): z.infer<Kind> {
  const read = contract.safeParse(value, { reportInput: true })
  if (!read.success) refuseFile(problemsOf(read.error, path))
  return read.data as z.infer<Kind>
}

/** What an archive holds, if it arrived as it was written. */
export function readArchive(file: unknown): EventContents {
  const { hash, contents } = checked(archiveHead, file, [])
  // Before anything in it is looked at: what is damaged is not to be explained field by field.
  if (hashOf(canonicalJson(contents)) !== hash) refuseFile([problem(['hash'], { code: 'damagedFile', parts: {} })])
  return checked(eventContents, contents, ['contents'])
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
  const { texts, problems } = hashedRows(contents)
  const found = [...checkContents(contents), ...problems]
  refuseFile(found.map((each) => ({ ...each, path: locate(each.path) })))
  const { id, name } = contents.event.at(-1)!.body
  const report = await brought(ctx, { contents, texts }, { preview, kind })
  if (!preview)
    for (const what of ['schedule', 'results', 'assignments', 'records', 'quarantine'] as const)
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
