import type { AgreedPlan } from '../../../src/model/briefing/index.ts'

/** What was agreed for a match, of invented teams. */
export const agreed = (match: string, call: number | null = 12): Omit<AgreedPlan, 'id' | 'agreedAt'> => ({
  match,
  person: null,
  from: 'c'.repeat(64),
  body: {
    alliance: 'red',
    jobs: ['A', 'B', 'C'].map((team) => ({
      ...{ team, start: 's', sources: ['in'], goals: ['out'], finish: 'dock', call },
    })),
    ...{ threat: { team: 'D', marker: null }, win: 0.6, scores: { ours: 50, theirs: 40 }, note: 'B goes first' },
  },
})
