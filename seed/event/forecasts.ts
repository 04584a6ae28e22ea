import type { NewForecast } from '../../src/store/types.ts'
import computed from './forecasts.json' with { type: 'json' }

/** What was forecast of the first half's matches from the fourth on, each from what was recorded before it (computeForecasts.ts). */
export const forecasts = computed as unknown as NewForecast[]
