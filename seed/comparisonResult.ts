import type { CompareReport } from '../src/model/compare/types.ts'

/** Provisional until the comparison can be computed. */
export const comparisonResult: CompareReport = {
  options: [
    { id: 'shearwater-best', mean: 0, sd: 0, p10: 0, p50: 0, p90: 0 },
    { id: 'kittiwake-best', mean: 0, sd: 0, p10: 0, p50: 0, p90: 0 },
  ],
  beats: {},
}
