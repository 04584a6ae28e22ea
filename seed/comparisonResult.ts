import type { CompareReport } from '../src/model/compare/types.ts'
import type { KeptAir } from '../src/model/documents/records.ts'
import air from './comparison-air.json' with { type: 'json' }
import computed from './comparison-result.json' with { type: 'json' }

/** What the model answered to the season's question; `npx tsx seed/compute.ts` computes it anew. */
export const comparisonResult = computed as unknown as CompareReport

/** What stored air does to its options, computed with it. */
export const comparisonAir: KeptAir[] = air
