import type { Stored } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import type { MatchSetup } from './setup.ts'

/** From which documents at which revisions, and from how many matches, a number comes. */
export function sourceOf(
  report: { replicates: number; seed: number },
  of: {
    game: Stored<'game'>
    ways: readonly Stored<'option'>[]
    designs: readonly Stored<'design'>[]
    setup: MatchSetup
  },
): string {
  const text = words().match.explain
  const { ours, theirs, other } = of.setup
  const ids = new Set([...ours, ...theirs, ...(other?.ours ?? []), ...(other?.theirs ?? [])])
  const named = of.ways
    .filter(({ id }) => ids.has(id))
    .map((way) => {
      const design = of.designs.find(({ id }) => id === way.body.design)
      return text.way(way.name, way.revision, design?.name ?? '', design?.revision ?? 0)
    })
  return text.source({
    game: of.game.name,
    revision: of.game.revision,
    ways: named.join('; '),
    matches: plain(report.replicates),
    seed: plain(report.seed),
  })
}
