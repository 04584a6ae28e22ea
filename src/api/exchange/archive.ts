import type { BringReport, EventContents, WrittenContents } from '../../model/event/archive/index.ts'
import { StorageFull } from '../../store/index.ts'
import { ApiError } from '../errors.ts'
import { byOf, refusal } from '../event/reading.ts'
import type { Context } from '../trpc.ts'
import { contentsHash, inLumps, piecesOf } from './pieces.ts'
import type { FileRead } from './reading.ts'

export async function contentsOf({ workspace }: Context, event: string): Promise<EventContents> {
  const contents = await workspace.exchange.contents(event)
  const document = contents && (await workspace.get('event', event))
  if (!contents || document?.removed !== false)
    throw refusal('notFound', { code: 'noEvent', parts: { id: event } }, ['event'])
  return contents
}

function written({ forecasts, plans, selection, ...rest }: EventContents): WrittenContents {
  return {
    ...rest,
    ...(forecasts.length > 0 && { forecasts }),
    ...(plans.length > 0 && { plans }),
    ...(selection.length > 0 && { selection }),
  }
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

/** Brings what a file holds into the workspace, or says what that would change. */
export async function bring(
  ctx: Context,
  file: FileRead,
  { preview, kind }: { preview: boolean; kind: 'archive' | 'tables' },
) {
  const { id, name } = file.contents.event.at(-1)!.body
  const report = await brought(ctx, file, { preview, kind })
  if (!preview)
    for (const what of [
      'schedule',
      'results',
      'assignments',
      'records',
      'quarantine',
      'forecasts',
      'plans',
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
