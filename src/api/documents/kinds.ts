import * as z from 'zod'
import type {
  ComparisonRecord,
  DecisionRecord,
  DesignRecord,
  DocumentKind,
  Game,
  OptionRecord,
  PartRecord,
  QuickSheetRecord,
  ReadingRecord,
  TimingRecord,
} from '../../model/documents/index.ts'
import type { EventRecord } from '../../model/scouting/index.ts'
import {
  comparisonRecord,
  decisionRecord,
  designRecord,
  game,
  optionRecord,
  partRecord,
  quickSheetRecord,
  readingRecord,
  timingRecord,
} from '../contracts/index.ts'
import { eventRecord } from '../contracts/scouting/index.ts'

/** The body of each kind of document. */
export interface Bodies {
  game: Game
  design: DesignRecord
  option: OptionRecord
  comparison: ComparisonRecord
  decision: DecisionRecord
  quickSheet: QuickSheetRecord
  reading: ReadingRecord
  timing: TimingRecord
  part: PartRecord
  event: EventRecord
}

export const kind = z
  .enum(['game', 'design', 'option', 'comparison', 'decision', 'quickSheet', 'reading', 'timing', 'part', 'event'])
  .describe('Kind of document')

/** The contract of each kind's body. */
export const contracts: { readonly [Kind in DocumentKind]: z.ZodType<Bodies[Kind]> } = {
  game,
  design: designRecord,
  option: optionRecord,
  comparison: comparisonRecord,
  decision: decisionRecord,
  quickSheet: quickSheetRecord,
  reading: readingRecord,
  timing: timingRecord,
  part: partRecord,
  event: eventRecord,
}

export const anyBody = z.union(Object.values(contracts)).meta({ id: 'DocumentBody', description: 'By kind' })

/** Where a body keeps the document's id and name. */
export const headIn: { readonly [kind in DocumentKind]: readonly string[] } = {
  game: [],
  design: ['robot'],
  option: ['option'],
  comparison: [],
  decision: [],
  quickSheet: [],
  reading: [],
  timing: [],
  part: ['part'],
  event: [],
}

export function headOf(kind: DocumentKind, body: Bodies[DocumentKind]): { id: string; name: string } {
  const head = headIn[kind].reduce<unknown>((part, key) => (part as { [key: string]: unknown })[key], body)
  const { id, name } = head as { id: string; name: string }
  return { id, name }
}
