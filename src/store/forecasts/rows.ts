import { createHash } from 'node:crypto'
import { canonicalJson } from '../../model/scouting/index.ts'
import type { ForecastBody, KeptForecast } from '../../model/scouting/record/index.ts'
import type { Scope } from '../event/schedule.ts'
import type { TransactionClient } from '../generated/internal/prismaNamespace.ts'
import type { ForecastModel } from '../generated/models.ts'

/** SHA-256 of what a forecast says and of when and from what it was made: whoever has the id can tell whether any of it was changed. */
export const forecastId = (content: Omit<KeptForecast, 'id'>): string =>
  createHash('sha256').update(canonicalJson(content)).digest('hex')

export function forecastRow(scope: Scope, { id, match, madeAt, from, version, body }: KeptForecast) {
  return { ...scope, id, match, madeAt: new Date(madeAt), madeFrom: from, version, body: JSON.stringify(body) }
}

export function forecastOf(row: Omit<ForecastModel, 'sequence' | 'workspaceId' | 'event'>): KeptForecast {
  const { id, match, madeAt, madeFrom, version, body } = row
  return { id, match, madeAt: madeAt.toISOString(), from: madeFrom, version, body: JSON.parse(body) as ForecastBody }
}

/** Oldest first. Those that came in a file stand among the own ones by their times. */
export async function readForecasts(
  client: Pick<TransactionClient, 'forecast'>,
  scope: Scope,
  match?: string,
): Promise<KeptForecast[]> {
  const where = { ...scope, ...(match === undefined ? {} : { match }) }
  const rows = await client.forecast.findMany({ where, orderBy: [{ madeAt: 'asc' }, { sequence: 'asc' }] })
  return rows.map(forecastOf)
}
