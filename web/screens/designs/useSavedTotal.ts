import { useEffect, useMemo, useState } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { useModel } from '../../worker/useModel.ts'
import type { Live } from './useLive.ts'

/**
 * The expected points of the design as it is saved, for what an edit is compared with; null while they are not known, or nothing is
 * edited. The plan that the screen makes of an unedited design is that of the saved one, so that it is asked about only where the
 * screen opened with edits.
 */
export function useSavedTotal(game: Game, saved: Option, live: Live, edited: boolean): number | null {
  const [known, setKnown] = useState<{ saved: Option; total: number } | null>(null)
  const now = !edited && live.settled ? (live.exact?.plan.total ?? null) : null
  useEffect(() => {
    if (now !== null) setKnown((before) => (before?.saved === saved ? before : { saved, total: now }))
  }, [saved, now])
  const isKnown = known?.saved === saved
  const asked = useModel(
    'quick',
    useMemo(() => (edited && !isKnown ? { game, option: saved } : null), [edited, isKnown, game, saved]),
  )
  if (!edited) return null
  if (isKnown) return known.total
  return asked.data && !asked.isPlaceholderData ? asked.data.total : null
}
