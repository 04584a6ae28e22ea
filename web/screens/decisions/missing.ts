import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'

const blank = (text: string): boolean => text.trim() === ''

/** What the record does not say yet and will be asked for, in sentences. */
export function missingFrom(decision: DecisionRecord): string[] {
  const texts = words().decisions.missing
  const { assumptions, objections, checks = [] } = decision
  const sourceless = assumptions.filter(({ source }) => blank(source)).length
  const unanswered = objections.filter(({ answer }) => blank(answer)).length
  return [
    ...(assumptions.length === 0 ? [texts.assumptions] : sourceless > 0 ? [texts.sources(sourceless)] : []),
    ...(decision.wouldChange.length === 0 ? [texts.wouldChange] : []),
    ...(decision.measureNext.length === 0 ? [texts.measureNext] : []),
    ...(objections.length === 0 ? [texts.objections] : unanswered > 0 ? [texts.answers(unanswered)] : []),
    ...(checks.length === 0 && blank(decision.checkAtEvent) ? [texts.checks] : []),
    ...(decision.agreed.length === 0 ? [texts.agreed] : []),
  ]
}
