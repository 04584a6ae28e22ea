import { createHash } from 'node:crypto'
import type { AgreedPlan, PlanBody } from '../../model/briefing/agreed.ts'
import { canonicalJson } from '../../model/scouting/index.ts'
import type { Scope } from '../event/schedule.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { AgreedPlanModel } from '../generated/models.ts'

/** SHA-256 of what a plan says, and of who agreed on it when and from what: whoever has the id can tell whether any of it was changed. */
export const planId = (content: Omit<AgreedPlan, 'id'>): string =>
  createHash('sha256').update(canonicalJson(content)).digest('hex')

export function planRow(scope: Scope, { id, match, agreedAt, person, from, body }: AgreedPlan) {
  return { ...scope, id, match, agreedAt: new Date(agreedAt), person, madeFrom: from, body: JSON.stringify(body) }
}

export function planOf(row: Omit<AgreedPlanModel, 'sequence' | 'workspaceId' | 'event'>): AgreedPlan {
  const { id, match, agreedAt, person, madeFrom, body } = row
  return { id, match, agreedAt: agreedAt.toISOString(), person, from: madeFrom, body: JSON.parse(body) as PlanBody }
}

/** Oldest first. */
export async function readPlans(client: Pick<TransactionClient, 'agreedPlan'>, scope: Scope): Promise<AgreedPlan[]> {
  const rows = await client.agreedPlan.findMany({ where: scope, orderBy: [{ agreedAt: 'asc' }, { sequence: 'asc' }] })
  return rows.map(planOf)
}
