import type { KeptForecast } from '../../model/scouting/record/index.ts'

/** A forecast on its way in: its time and id are the store's. */
export type NewForecast = Omit<KeptForecast, 'id' | 'madeAt'>

/** A forecast that is kept, and whether it was not before. */
export interface Kept {
  forecast: KeptForecast
  fresh: boolean
}

/** Forecasts of a workspace's events. They are added, never changed and never deleted. */
export interface ForecastStore {
  /**
   * Keeps what is shown now, in the order given. For each: what is kept of it, which is the last one of its match where that was made from
   * the same; null, and nothing is kept, where the match has a result or is not in the schedule.
   */
  keep(event: string, forecasts: readonly NewForecast[]): Promise<(Kept | null)[]>
  /** How many there are: another after every change. */
  count(event: string): Promise<number>
  /** All of an event, or of one match, oldest first. */
  of(event: string, match?: string): Promise<KeptForecast[]>
}
