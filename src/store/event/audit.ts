import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { By } from './types.ts'

/** Writes down within the change's own transaction who changed what. */
export async function audit(
  transaction: TransactionClient,
  entry: { workspaceId: string; at: Date; by: By; action: string; subject: string; detail: object },
): Promise<void> {
  const { by, detail, ...row } = entry
  await transaction.auditEntry.create({
    data: { ...row, person: by.person, device: by.device, detail: JSON.stringify(detail) },
  })
}
