import type { KeptForecast } from '../../model/scouting/record/index.ts'
import { readStanding } from '../event/results.ts'
import { readSchedule } from '../event/schedule.ts'
import type { PrismaClient } from '../generated/client.ts'
import { forecastId, forecastRow, readForecasts } from './rows.ts'
import type { ForecastStore, Kept, NewForecast } from './types.ts'

/** The forecasts of one workspace: its id stands in every query because it is fixed here. */
export class DatabaseForecasts implements ForecastStore {
  readonly #client: PrismaClient
  readonly #workspaceId: string
  readonly #now: () => Date

  constructor(client: PrismaClient, workspaceId: string, now: () => Date) {
    this.#client = client
    this.#workspaceId = workspaceId
    this.#now = now
  }

  of(event: string, match?: string) {
    return readForecasts(this.#client, { workspaceId: this.#workspaceId, event }, match)
  }

  count(event: string) {
    return this.#client.forecast.count({ where: { workspaceId: this.#workspaceId, event } })
  }

  /** In one transaction with the question whether there is a result, so that none is kept behind one. */
  keep(event: string, forecasts: readonly NewForecast[]): Promise<(Kept | null)[]> {
    const scope = { workspaceId: this.#workspaceId, event }
    return this.#client.$transaction(async (transaction) => {
      const { matches } = await readSchedule(transaction, scope)
      const over = new Set((await readStanding(transaction, scope)).map(({ match }) => match))
      const open = new Set(matches.map(({ match }) => match.id).filter((id) => !over.has(id)))
      const only = forecasts.length === 1 ? forecasts[0]!.match : undefined
      const last = new Map((await readForecasts(transaction, scope, only)).map((each) => [each.match, each]))
      const added: KeptForecast[] = []
      const kept: (Kept | null)[] = []
      for (const forecast of forecasts) {
        if (!open.has(forecast.match)) {
          kept.push(null)
          continue
        }
        const before = last.get(forecast.match)
        if (before && before.from === forecast.from && before.version === forecast.version) {
          kept.push({ forecast: before, fresh: false })
          continue
        }
        const content = { ...forecast, madeAt: this.#now().toISOString() }
        const fresh = { id: forecastId(content), ...content }
        added.push(fresh)
        last.set(fresh.match, fresh)
        kept.push({ forecast: fresh, fresh: true })
      }
      if (added.length > 0)
        await transaction.forecast.createMany({ data: added.map((each) => forecastRow(scope, each)) })
      return kept
    })
  }
}
