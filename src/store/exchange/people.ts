import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'

/** More than this many in one question the engine refuses. */
const most = 500

/** What stands in the place of a nickname that a lead removed. */
export const forgotten = ''

/** What people are called (`forgotten`: that was removed), members and those who came with a file; ids that nobody has are left out. */
export async function nicknames(
  client: Pick<TransactionClient, 'person' | 'namedPerson'>,
  workspaceId: string,
  ids: ReadonlySet<string>,
): Promise<Map<string, string>> {
  const names = new Map<string, string>()
  const select = { id: true, nickname: true } as const
  const named = await withIds(ids, (id) => client.namedPerson.findMany({ where: { workspaceId, id }, select }))
  const members = await withIds(ids, (id) => client.person.findMany({ where: { workspaceId, id }, select }))
  for (const { id, nickname } of [...named, ...members]) names.set(id, nickname)
  return names
}

/** What is found of these ids, asked for in parts. */
export async function withIds<Row>(
  ids: ReadonlySet<string>,
  find: (id: { in: string[] }) => Promise<Row[]>,
): Promise<Row[]> {
  const all = [...ids]
  const found: Row[] = []
  for (let from = 0; from < all.length; from += most) found.push(...(await find({ in: all.slice(from, from + most) })))
  return found
}
