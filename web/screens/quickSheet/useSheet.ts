import { useState } from 'react'
import { askLive } from '../../worker/client.ts'
import type { SheetAsk, WayAnswer } from '../../worker/protocol.ts'
import { useLatest } from '../designs/useLatest.ts'

export interface SheetResults {
  asked: SheetAsk
  /** By game, strength and way, as they were asked for. */
  answers: WayAnswer[][][]
}

/** Points of all ways that follow every edit. The last results stay until the next are there. */
export function useSheet(wanted: SheetAsk | null): { results: SheetResults | null; error: Error | null } {
  const [results, setResults] = useState<SheetResults | null>(null)
  const [error, setError] = useState<Error | null>(null)
  useLatest(wanted, async (asked, still) => {
    try {
      const answers = await askLive('exact', 'sheet', asked)
      if (!still.shown()) return
      setResults({ asked, answers })
      setError(null)
    } catch (failed) {
      if (still.shown()) setError(failed as Error)
    }
  })
  return { results, error }
}
