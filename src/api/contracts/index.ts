// What the server is asked to compute, and what it answers
export { airPlanAnswer, airPlanRequest } from './compute/airPlan.ts'
export { compareAnswer, compareRequest } from './compute/compare.ts'
export { legAnswer, legRequest } from './compute/leg.ts'
export { lineupAnswer, lineupRequest } from './compute/lineup.ts'
export { matchAnswer, matchRequest } from './compute/match.ts'
export { planAnswer, planRequest } from './compute/plan.ts'
export { seasonAnswer, seasonRequest } from './compute/season.ts'
export { sweepAnswer, sweepRequest } from './compute/sweep.ts'
export { travelAnswer, travelRequest } from './compute/travel.ts'
// Documents of the model, and their parts
export { duration } from './duration.ts'
export { game } from './game.ts'
export { option } from './option.ts'
export { partRecord } from './part.ts'
export { format, id, list, name } from './primitives.ts'
// What is kept
export { guess, quickSheetRecord, readingRecord } from './quickSheet.ts'
export { comparisonRecord, decisionRecord, designRecord, optionRecord, revision } from './records.ts'
export { robot } from './robot.ts'
// What is wrong, in sentences
export { problemsOf, recall, rule, written } from './sentences.ts'
export { timingRecord } from './timing.ts'
