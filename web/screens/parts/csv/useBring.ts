import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { saveDocument } from '../../../data/api.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import type { PartKind } from '../numbers.ts'
import { largest, readParts } from './readParts.ts'
import { canSave, isBad, type Judged, judge } from './verdicts.ts'

/** What became of a line that was to be saved. */
export type Outcome = { revision: number } | { trouble: string }

export interface Looked {
  kind: PartKind
  lines: readonly Judged[]
  /** By line, once it was tried. */
  outcomes: ReadonlyMap<number, Outcome>
}

/** A table of parts on its way to the shelf: its text, what was found in it, and what became of it. */
export function useBring() {
  const [text, setText] = useState('')
  const [looked, setLooked] = useState<Looked | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const queries = useQueryClient()
  const take = (next: string) => {
    setText(next)
    setLooked(null)
    setTrouble(null)
  }
  const during = async (work: () => Promise<void>) => {
    setTrouble(null)
    setBusy(true)
    try {
      await work()
    } catch (error) {
      setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  const look = (given = text) =>
    during(async () => {
      setLooked(null)
      const { kind, lines } = await readParts(given)
      setLooked({ kind, lines: await judge(lines), outcomes: new Map() })
    })
  const readFile = (file: File) =>
    during(async () => {
      const texts = words().parts.csv
      if (file.size > largest.bytes) throw new Error(texts.tooLarge(plain(largest.bytes / 1e6)))
      const read = await file.text().catch((error: Error) => {
        throw new Error(texts.notRead(error.message))
      })
      take(read)
      await look(read)
    })
  const saveLines = () =>
    during(async () => {
      if (!looked) return
      const results = await Promise.all(
        looked.lines.filter(canSave).map(async (line) => [line.line, await send(line)] as const),
      )
      setLooked({ ...looked, outcomes: new Map(results) })
      // Once for all: after each line the whole shelf would be asked for anew.
      await Promise.all(
        ['documents', 'document', 'revisions'].map((of) => queries.invalidateQueries({ queryKey: [of, 'part'] })),
      )
    })
  return { text, take, look, readFile, saveLines, looked, trouble, busy }
}

async function send({ part, verdict }: Judged): Promise<Outcome> {
  const texts = words().parts.csv
  const { id, name } = part!
  const base = verdict.does === 'change' ? verdict.revision : null
  try {
    const outcome = await saveDocument({ kind: 'part', id, name, base, note: texts.note, body: { format: 1, part } })
    return 'saved' in outcome ? { revision: outcome.saved.revision } : { trouble: texts.between }
  } catch (error) {
    return { trouble: texts.notSaved((error as Error).message) }
  }
}

/** How many lines can be saved, can not, and are on the shelf already in another state. */
export const counted = (lines: readonly Judged[]) => ({
  good: lines.filter(canSave).length,
  bad: lines.filter(isBad).length,
  changes: lines.filter(({ verdict }) => verdict.does === 'change').length,
})
