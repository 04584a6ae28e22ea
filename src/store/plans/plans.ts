import { readSchedule } from '../event/schedule.ts'
import type { PrismaClient } from '../generated/client.ts'
import { planId, planRow, readPlans } from './rows.ts'
import type { NewPlan, PlanStore } from './types.ts'

/** The agreed plans of one workspace: its id stands in every query because it is fixed here. */
export class DatabasePlans implements PlanStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  of(event: string) {
    return readPlans(this.#client, { workspaceId: this.#workspaceId, event })
  }

  count(event: string) {
    return this.#client.agreedPlan.count({ where: { workspaceId: this.#workspaceId, event } })
  }

  agree(event: string, plan: NewPlan) {
    const scope = { workspaceId: this.#workspaceId, event }
    return this.#client.$transaction(async (transaction) => {
      const { matches } = await readSchedule(transaction, scope)
      if (!matches.some(({ match }) => match.id === plan.match)) return null
      const content = { ...plan, agreedAt: this.#now().toISOString() }
      const kept = { id: planId(content), ...content }
      await transaction.agreedPlan.create({ data: planRow(scope, kept) })
      return kept
    })
  }
}
