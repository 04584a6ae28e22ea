import type { CompareReport } from '../src/model/compare/types.ts'
import computed from './comparison-result.json' with { type: 'json' }

/** What the model answered to the season's question; `npx tsx seed/compute.ts` computes it anew. */
export const comparisonResult = computed as unknown as CompareReport
