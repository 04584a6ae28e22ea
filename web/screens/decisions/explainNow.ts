import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import { type Explanation, robotInputs } from '../../words/explain.ts'
import { points, signedPoints } from '../../words/format.ts'
import { isNothing, optionName } from '../../words/verdict.ts'
import type { Change, Means, Moved } from './changes.ts'

/** What a number of the record was computed to now: what is written there, and what each document moved. */
export function explainNow(
  decision: DecisionRecord,
  of: {
    changes: readonly Change[]
    moved: Moved
    /** The option whose points these are, or that less another one: the lead of what was chosen. */
    option: string
    rival?: string | undefined
    source: string
  },
): Explanation {
  const texts = words().decisions.again
  const { changes, moved, option, rival } = of
  const { options } = decision.snapshot
  const value = (means: Means) => means[option]! - (rival === undefined ? 0 : means[rival]!)
  const write = rival === undefined ? points : signedPoints
  const part = (label: string, means: Means | null, note?: string) => ({
    label,
    value: means ? signedPoints(value(means)) : texts.notAlone,
    ...(note ? { note } : {}),
  })
  const own = options.find(({ id }) => id === option)
  return {
    title: rival === undefined ? texts.came.title(optionName(options, option)) : texts.lead,
    result: texts.came.result(write(value(moved.now))),
    formula: texts.came.formula,
    parts: [
      { label: texts.written, value: write(value(moved.written)) },
      ...(isNothing(value(moved.program)) ? [] : [part(texts.program, moved.program)]),
      ...changes.map((change, index) =>
        part(texts.kinds[change.kind](change.name), moved.alone[index] ?? null, texts.revision(change.revision)),
      ),
      ...(changes.length > 1 ? [part(texts.together, moved.together)] : []),
    ],
    total: { label: texts.now, value: write(value(moved.now)) },
    inputs: rival === undefined && own ? robotInputs(own) : [],
    source: of.source,
  }
}
