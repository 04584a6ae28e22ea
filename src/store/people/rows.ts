import type { Role } from '../../model/scouting/roles.ts'
import type { AuditEntryModel, DeviceModel, InvitationModel, PersonModel } from '../generated/models.ts'
import type { AuditEntry, Device, Invitation, Person } from './types.ts'

const time = (date: Date | null): string | null => date?.toISOString() ?? null

/** Letters in whichever way they were typed: nobody tells 'Ada' and 'ADA' apart by ear. */
export const folded = (nickname: string): string => nickname.normalize('NFKC').trim().toLowerCase()

export const personOf = (row: PersonModel): Person => ({
  id: row.id,
  nickname: row.nickname,
  role: row.role as Role,
  hasPassphrase: row.passphraseHash !== null,
  createdAt: row.createdAt.toISOString(),
  endedAt: time(row.endedAt),
})

export const deviceOf = (row: DeviceModel & { owner: PersonModel }): Device => ({
  id: row.id,
  person: row.person,
  nickname: row.owner.nickname,
  name: row.name,
  createdAt: row.createdAt.toISOString(),
  lastSeenAt: row.lastSeenAt.toISOString(),
  unsent: row.unsent,
  app: row.app,
  revokedAt: time(row.revokedAt),
})

export const invitationOf = (row: InvitationModel): Invitation => ({
  id: row.id,
  role: row.role as Role,
  nickname: row.nickname,
  event: row.event,
  createdBy: row.createdBy,
  createdAt: row.createdAt.toISOString(),
  expiresAt: row.expiresAt.toISOString(),
  usedAt: time(row.usedAt),
  usedBy: row.usedBy,
  withdrawnAt: time(row.withdrawnAt),
})

export const auditOf = (row: AuditEntryModel): AuditEntry => ({
  sequence: row.sequence,
  at: row.at.toISOString(),
  person: row.person,
  device: row.device,
  action: row.action,
  subject: row.subject,
  detail: JSON.parse(row.detail),
})
