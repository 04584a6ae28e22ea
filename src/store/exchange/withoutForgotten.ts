import type { EventContents } from '../../model/event/archive/index.ts'
import type { Row } from '../../model/scouting/types.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import { drivenBy, newStranger } from '../people/personal/erase.ts'
import { isDriver } from '../people/personal/held.ts'
import { withoutName } from '../people/personal/typed.ts'
import { folded } from '../people/rows.ts'
import { forgotten, nicknames, withIds } from './people.ts'
import type { BroughtFile } from './types.ts'

/**
 * The file without the nicknames of people who were deleted here, where it names them as drivers: with the word that stands for each of them
 * here, so that what was held before is known again. Whose names these are the file says itself.
 */
export async function withoutForgotten(
  client: TransactionClient,
  workspaceId: string,
  file: BroughtFile,
): Promise<BroughtFile> {
  const { people } = file.contents
  const here = await nicknames(client, workspaceId, new Set(people.map(({ id }) => id)))
  const names = new Set(
    people.flatMap(({ id, nickname }) =>
      here.get(id) === forgotten && folded(nickname) !== folded(forgotten) ? [nickname] : [],
    ),
  )
  let without = file
  for (const nickname of names) {
    const stranger = await strangerFor(client, { workspaceId, nickname, contents: file.contents })
    without = withoutDriver(without, nickname, stranger)
  }
  return without
}

/** The word that took its place when it was deleted, by a record that is here and in the file; else a new one. */
async function strangerFor(
  client: TransactionClient,
  { workspaceId, nickname, contents }: { workspaceId: string; nickname: string; contents: EventContents },
): Promise<string> {
  const driven = contents.records.flatMap(({ row }) => (isDriver(row, nickname) ? [row.id] : []))
  const select = { body: true } as const
  const there = await withIds(new Set(driven), (id) =>
    client.fieldRecord.findMany({ where: { workspaceId, id }, select }),
  )
  for (const { body } of there) {
    const { driver } = (JSON.parse(body) as { body: { driver?: string } }).body
    if (driver !== undefined) return driver
  }
  return newStranger()
}

function withoutDriver({ contents, texts }: BroughtFile, nickname: string, stranger: string): BroughtFile {
  const fresh = new Map(texts)
  const taken = <Kept extends { row: Row; hash: string }>(each: Kept): Kept => {
    if (!isDriver(each.row, nickname)) return each
    const { body, hash } = drivenBy(each.row, stranger)
    fresh.set(hash, body)
    return { ...each, hash, row: JSON.parse(body) as Kept['row'] }
  }
  const changed = {
    ...contents,
    records: contents.records.map(taken),
    apart: contents.apart.map(taken),
    event: withoutName(contents.event, { field: 'driver', nickname, stranger }),
  }
  return { contents: changed, texts: fresh }
}
