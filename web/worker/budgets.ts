import type { Kind } from './protocol.ts'

/**
 * How long each question may take at most (s): some tens of times what it takes for the demo season on a small machine,
 * so that a slow phone keeps its answers. What follows an edit holds back the next edit and gets the least. Belief is
 * asked for by a person, shows its progress and can be stopped, so it may take long.
 */
export const budgets: { readonly [kind in Kind]: number } = {
  estimate: 10,
  legs: 20,
  travel: 20,
  quick: 30,
  likely: 60,
  goals: 60,
  report: 90,
  compare: 180,
  curve: 180,
  turn: 180,
  mapPart: 180,
  difference: 30,
  pieceWorth: 60,
  airPlan: 120,
  beliefPart: 900,
  beliefSummary: 180,
  sheet: 60,
  reach: 20,
  sweep: 30,
  gearings: 120,
  match: 120,
  stated: 240,
  picksKept: 120,
  picksRough: 120,
  picksOrder: 120,
  picksRound: 120,
  picksOffer: 180,
  playoffs: 120,
  substitutions: 180,
  lineupCandidates: 240,
  lineupMatches: 240,
  sampleMatches: 120,
  briefing: 240,
  ownLineUp: 120,
  ready: 120,
}
