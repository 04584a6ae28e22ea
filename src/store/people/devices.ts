import { randomUUID } from 'node:crypto'
import type { Role } from '../../model/scouting/roles.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { PersonModel } from '../generated/models.ts'
import { hashOfToken, newToken } from './tokens.ts'
import type { Entered, EnteringDevice } from './types.ts'

export type Client = Pick<
  TransactionClient,
  'workspace' | 'person' | 'device' | 'invitation' | 'claimLink' | 'auditEntry'
>

/** A session of its own for a device: what it is called stays, if that is its to claim; what it was signed in as ends. */
export async function enterDevice(
  client: Client,
  owner: PersonModel,
  { device, now }: { device: EnteringDevice; now: Date },
): Promise<Entered> {
  const { workspaceId } = owner
  const id = await idFor(client, owner, device)
  if (device.signedIn && device.signedIn !== id) await signOut(client, { workspaceId, id: device.signedIn }, now)
  const token = newToken()
  const state = { person: owner.id, name: device.name, tokenHash: hashOfToken(token), lastSeenAt: now, revokedAt: null }
  await client.device.upsert({
    where: { workspaceId_id: { workspaceId, id } },
    create: { workspaceId, id, createdAt: now, ...state },
    update: state,
  })
  const { name: workspace } = await client.workspace.findUniqueOrThrow({ where: { id: workspaceId } })
  const person = { id: owner.id, nickname: owner.nickname, role: owner.role as Role }
  return { token, session: { workspaceId, workspace, person, device: { id, name: device.name } } }
}

/** Nobody ends another's session by naming the other's device. */
async function idFor(client: Client, { workspaceId, id: person }: PersonModel, device: EnteringDevice) {
  if (device.id === undefined) return randomUUID()
  const known = await client.device.findUnique({ where: { workspaceId_id: { workspaceId, id: device.id } } })
  if (!known || known.revokedAt !== null || known.person === person || device.signedIn === known.id) return device.id
  return randomUUID()
}

/** Ends the sessions of devices; the token of one that is signed out opens nothing. */
export async function signOut(
  client: Client,
  where: { workspaceId: string; id?: string | { not: string }; person?: string },
  now: Date,
): Promise<number> {
  const { count } = await client.device.updateMany({ where: { ...where, revokedAt: null }, data: { revokedAt: now } })
  return count
}
