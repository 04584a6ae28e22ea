/** Where one more look is worth most for the coming decision. */
export { type ComingDecision, comingDecision, type DecisionRequest } from './decision.ts'
export { afterLook, expectedRise, knowledgeGradient, type Prospect } from './gradient.ts'
export { type Candidate, prospectsOf } from './prospects.ts'
export * from './whereToLook.ts'
