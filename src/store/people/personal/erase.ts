import { createHash, randomBytes } from 'node:crypto'
import { canonicalJson } from '../../../model/scouting/canonical.ts'
import type { Row } from '../../../model/scouting/types.ts'
import { audit } from '../../event/audit.ts'
import type { By } from '../../event/types.ts'
import { forgotten } from '../../exchange/people.ts'
import type { TransactionClient } from '../../generated/internal/prismaNamespace.ts'
import type { PersonModel } from '../../generated/models.ts'
import { folded } from '../rows.ts'
import type { Erased } from '../types.ts'
import { isDriver, rowsWithDriver } from './held.ts'
import { takeNameOut } from './typed.ts'

/** A word in a name's place: the same for all of one person's runs, and nobody can tell whose. */
export const newStranger = (): string => `somebody-${randomBytes(4).toString('hex')}`

/** The same row with another driver, as it is kept. */
export function drivenBy(row: Row, driver: string): { body: string; hash: string } {
  const body = canonicalJson({ ...row, body: { ...row.body, driver } })
  return { body, hash: createHash('sha256').update(body).digest('hex') }
}

/**
 * Takes a nickname out of what was typed in: drivers of records, and documents that name people. These rows are otherwise never changed; their
 * hashes follow. Runs in the turn of the workspace.
 */
export async function eraseNames(
  client: TransactionClient,
  workspaceId: string,
  nickname: string,
): Promise<Pick<Erased, 'driven' | 'typed'>> {
  const stranger = newStranger()
  const driven = await rowsWithDriver(client, workspaceId, nickname)
  for (const { arrival, row } of driven)
    await client.fieldRecord.update({ where: { arrival }, data: drivenBy(row, stranger) })
  const apart = await client.quarantinedRecord.findMany({ where: { workspaceId, body: { contains: '"driver":' } } })
  for (const { arrival, body } of apart) {
    const row = JSON.parse(body) as Row
    if (isDriver(row, nickname))
      await client.quarantinedRecord.update({ where: { arrival }, data: drivenBy(row, stranger) })
  }
  return { driven: driven.length, typed: await takeNameOut(client, workspaceId, { nickname, stranger }) }
}

/** Takes away the account with all that names it. Runs in the turn of people, and writes down that it did, without the name. */
export async function eraseAccount(
  client: TransactionClient,
  { workspaceId, id, nickname }: PersonModel,
  { by, now }: { by: By; now: Date },
): Promise<number> {
  const devices = await client.device.findMany({ where: { workspaceId, person: id }, select: { id: true } })
  await client.device.deleteMany({ where: { workspaceId, person: id } })
  await eraseInvitations(client, { workspaceId, nickname, now })
  await eraseFromLog(client, { workspaceId, nickname, devices: new Set(devices.map((each) => each.id)) })
  await client.person.delete({ where: { workspaceId_id: { workspaceId, id } } })
  // So that no file of an event brings the name back.
  await client.namedPerson.upsert({
    where: { workspaceId_id: { workspaceId, id } },
    create: { workspaceId, id, nickname: forgotten },
    update: { nickname: forgotten },
  })
  await audit(client, { workspaceId, at: now, by, action: 'people.erase', subject: id, detail: {} })
  return client.fieldRecord.count({ where: { workspaceId, OR: [{ scout: id }, { person: id }] } })
}

/** One that is still open would bring the person back by its name. */
async function eraseInvitations(
  client: TransactionClient,
  { workspaceId, nickname, now }: { workspaceId: string; nickname: string; now: Date },
): Promise<void> {
  const all = await client.invitation.findMany({ where: { workspaceId, nickname: { not: null } } })
  for (const { id, nickname: whom, usedAt, withdrawnAt } of all) {
    if (whom === null || folded(whom) !== folded(nickname)) continue
    const data = { nickname: null, withdrawnAt: usedAt === null ? (withdrawnAt ?? now) : withdrawnAt }
    await client.invitation.update({ where: { workspaceId_id: { workspaceId, id } }, data })
  }
}

/** Names in what others did about the person; that it was done stays. */
async function eraseFromLog(
  client: TransactionClient,
  { workspaceId, nickname, devices }: { workspaceId: string; nickname: string; devices: ReadonlySet<string> },
): Promise<void> {
  const rows = await client.auditEntry.findMany({
    where: { workspaceId, OR: [{ detail: { contains: '"nickname":' } }, { detail: { contains: '"name":' } }] },
    select: { sequence: true, subject: true, detail: true },
  })
  for (const { sequence, subject, detail } of rows) {
    const { nickname: whom, name, ...rest } = JSON.parse(detail) as { [field: string]: unknown }
    const isWhom = typeof whom === 'string' && folded(whom) === folded(nickname)
    const isDevice = subject.split(' ').some((part) => devices.has(part))
    if (!isWhom && !(isDevice && name !== undefined)) continue
    const kept = {
      ...rest,
      ...(whom !== undefined && !isWhom && { nickname: whom }),
      ...(name !== undefined && !isDevice && { name }),
    }
    await client.auditEntry.update({ where: { sequence }, data: { detail: JSON.stringify(kept) } })
  }
}
