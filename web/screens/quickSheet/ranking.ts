import type { QuickSheetRecord, StrengthName } from '../../../src/model/documents/quickSheet.ts'
import { changes, order, type Ranked, strengthNames } from '../../../src/model/sheet/index.ts'
import { words } from '../../words/catalogue.ts'
import { listed, points } from '../../words/format.ts'
import { isNothing } from '../../words/verdict.ts'
import type { WayAnswer } from '../../worker/protocol.ts'

/** The ways that could be computed, with their points. */
export const rankedOf = (sheet: QuickSheetRecord, answers: readonly WayAnswer[]): Ranked[] =>
  sheet.ways.flatMap(({ id }, index) => {
    const answer = answers[index]
    return answer && 'result' in answer ? [{ id, points: answer.result.points }] : []
  })

const pointsOf = (ranked: readonly Ranked[], id: string): number =>
  ranked.find((way) => way.id === id)?.points ?? Number.NaN

/** Who leads at middling play, and by how much. */
export function leadWords(sheet: QuickSheetRecord, ranked: readonly Ranked[]): string | null {
  const [best, second] = order(ranked)
  if (best === undefined || second === undefined) return null
  const texts = words().quickSheet.ranking
  const name = (id: string) => sheet.ways.find((way) => way.id === id)!.name
  const lead = pointsOf(ranked, best) - pointsOf(ranked, second)
  if (!isNothing(lead)) return texts.best(name(best), points(lead))
  const even = order(ranked).filter((id) => isNothing(pointsOf(ranked, best) - pointsOf(ranked, id)))
  return texts.even(listed(even.map((id) => words().actions.quoted(name(id)))))
}

const most = 6

/** Whether the order is the same at all strengths, and where it turns. */
export function strengthWords(
  sheet: QuickSheetRecord,
  ranked: { readonly [name in StrengthName]: readonly Ranked[] },
): { headline: string; flips: string[] } | null {
  if (ranked.middling.length < 2) return null
  // While all come out even there is no order, and nothing can be said of it.
  if (strengthNames.every((strength) => new Set(ranked[strength].map((way) => points(way.points))).size === 1))
    return null
  const texts = words().quickSheet
  const name = (id: string) => sheet.ways.find((way) => way.id === id)!.name
  const flips = strengthNames.slice(0, -1).flatMap((from, index) => {
    const to = strengthNames[index + 1]!
    return changes(ranked[from], ranked[to]).map(([ahead, behind]) =>
      texts.ranking.flip(name(ahead), name(behind), texts.strength.names[from], texts.strength.names[to]),
    )
  })
  if (flips.length === 0) return { headline: texts.ranking.same, flips }
  const shown = flips.length > most ? [...flips.slice(0, most), texts.ranking.more(flips.length - most)] : flips
  const bests = new Set(strengthNames.map((strength) => order(ranked[strength])[0]!))
  const [best] = [...bests]
  return { headline: bests.size === 1 ? texts.ranking.sameBest(name(best!)) : texts.ranking.turns, flips: shown }
}
