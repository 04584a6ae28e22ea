import type { Option } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import { listed, points, signedPoints } from '../../words/format.ts'
import { isNothing, optionName } from '../../words/verdict.ts'
import type { Change, Means, Moved } from './changes.ts'

/** One sentence per option: from where to where, and which documents did it, the greatest first. */
export function movedWords(moved: Moved, changes: readonly Change[], options: readonly Option[]): string[] {
  const texts = words().decisions.again
  return Object.keys(moved.written).map((option) => {
    const [before, now] = [moved.written[option]!, moved.now[option]!]
    const name = optionName(options, option)
    const parts = partsOf(moved, changes, option)
      .filter(({ by }) => !isNothing(by))
      .sort((a, b) => Math.abs(b.by) - Math.abs(a.by))
      .map(({ what, by }) => texts.part(what, signedPoints(by)))
    const head = isNothing(now - before)
      ? texts.unmoved(name, points(now))
      : texts.moved(name, points(before), points(now), signedPoints(now - before))
    return `${head}${parts.length > 0 ? texts.because(listed(parts)) : ''}.`
  })
}

function partsOf(moved: Moved, changes: readonly Change[], option: string): { what: string; by: number }[] {
  const texts = words().decisions.again
  const by = (means: Means | null) => means?.[option] ?? 0
  return [
    { what: texts.programPart, by: by(moved.program) },
    ...changes.map((change, index) => ({
      what: texts.kinds[change.kind](change.name),
      by: by(moved.alone[index] ?? null),
    })),
    { what: texts.togetherPart, by: by(moved.together) },
  ]
}
