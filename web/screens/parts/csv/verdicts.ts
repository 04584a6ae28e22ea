import type { Part } from '../../../../src/model/timing/parts.ts'
import { checkDocument, getDocument, listDocuments } from '../../../data/api.ts'
import { differences } from '../../../data/difference.ts'
import type { Stored } from '../../../data/documents.ts'
import { labelOf, type ReadLine } from './readParts.ts'

/** What a line of a table would do to the shelf. */
export type Verdict =
  | { does: 'new' }
  | { does: 'nothing'; revision: number }
  /** `removed`: it was taken off the shelf and comes back. */
  | { does: 'change'; revision: number; removed: boolean; places: string[] }
  | { does: 'broken'; problems: string[] }
  | { does: 'otherKind'; id: string }

export interface Judged extends ReadLine {
  verdict: Verdict
}

/** Asks the server about each line: what is on the shelf under its id, and whether it would take the part. Nothing is saved. */
export async function judge(lines: readonly ReadLine[]): Promise<Judged[]> {
  const shelf = new Map((await listDocuments('part', true)).map((summary) => [summary.id, summary]))
  return Promise.all(
    lines.map(async (line): Promise<Judged> => {
      if (!line.part) return { ...line, verdict: { does: 'broken', problems: line.problems } }
      const known = shelf.get(line.part.id)
      const [checked, stored] = await Promise.all([
        checkDocument('part', { format: 1, part: line.part }),
        known ? (getDocument('part', known.id) as Promise<Stored<'part'>>) : null,
      ])
      if (checked.problems.length > 0)
        return { ...line, verdict: { does: 'broken', problems: checked.problems.map(({ message }) => message) } }
      return { ...line, verdict: against(line.part, stored) }
    }),
  )
}

/** A part against what is on the shelf under its id. */
function against(part: Part, stored: Stored<'part'> | null): Verdict {
  if (!stored) return { does: 'new' }
  const { revision, removed } = stored
  if (stored.body.part.kind !== part.kind) return { does: 'otherKind', id: part.id }
  const places = [...new Set(differences(stored.body.part, part).map(({ place }) => labelOf(place[0])))]
  return places.length === 0 && !removed ? { does: 'nothing', revision } : { does: 'change', revision, removed, places }
}

/** Whether a line can be saved, whether it can not, and whether there is nothing to save. */
export const canSave = ({ verdict }: Judged): boolean => verdict.does === 'new' || verdict.does === 'change'
export const isBad = ({ verdict }: Judged): boolean => verdict.does === 'broken' || verdict.does === 'otherKind'
