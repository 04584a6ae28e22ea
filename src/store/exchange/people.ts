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
  const all = [...ids]
  for (let from = 0; from < all.length; from += most) {
    const query = {
      where: { workspaceId, id: { in: all.slice(from, from + most) } },
      select: { id: true, nickname: true },
    }
    const found = [...(await client.namedPerson.findMany(query)), ...(await client.person.findMany(query))]
    for (const { id, nickname } of found) names.set(id, nickname)
  }
  return names
}
