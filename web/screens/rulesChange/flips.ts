import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { isLevel } from '../../words/verdict.ts'
import { withOwnPoints } from '../decisions/changes.ts'

type Options = readonly { id: string; mean: number }[]

const sorted = (options: Options) => [...options].sort((a, b) => b.mean - a.mean)

export interface Standing {
  best: string
  second: string | null
  /** Points by which the best option is ahead of the next; null where there is none. */
  lead: number | null
}

export function standing(options: Options): Standing {
  const [best, second] = sorted(options)
  return { best: best?.id ?? '', second: second?.id ?? null, lead: best && second ? best.mean - second.mean : null }
}

export interface Consequence {
  before: Standing
  after: Standing
  /** Another option is the best now, and not just level with the one before. */
  flips: boolean
  /** Points by which what was chosen is behind the best now. */
  chosenBehind: number
}

/** What other rules do to a decision: the best option then and now. */
export function consequence({ chosen, snapshot }: DecisionRecord, now: CompareReport): Consequence {
  const computed = Object.fromEntries(now.options.map(({ id, mean }) => [id, mean]))
  // Overridden points stay as they were set.
  const own = withOwnPoints(computed, snapshot.overrides)
  const mean = (id: string) => own[id] ?? Number.NaN
  const [before, after] = [
    standing(snapshot.result.options),
    standing(now.options.map(({ id }) => ({ id, mean: mean(id) }))),
  ]
  return {
    before,
    after,
    flips: before.best !== after.best && !isLevel(after),
    chosenBehind: mean(after.best) - mean(chosen),
  }
}
