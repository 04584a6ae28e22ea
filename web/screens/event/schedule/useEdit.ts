import { useState } from 'react'
import type { Match } from '../../../../src/model/scouting/types.ts'
import type { Undo } from '../../../../src/store/types.ts'
import { previewSchedule, type SchedulePreview, useEventChanges } from '../../../data/events.ts'
import { words } from '../../../words/catalogue.ts'

interface Looked {
  matches: Match[]
  remove: string[]
  preview: SchedulePreview
}

/** An edit of the schedule: looked at, applied, undone. */
export function useEdit(event: string) {
  const changes = useEventChanges(event)
  const [looked, setLooked] = useState<Looked | null>(null)
  const [undo, setUndo] = useState<{ mark: string; undo: Undo; touched: number } | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
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
  const look = (matches: Match[], remove: string[] = []) =>
    during(async () => {
      setLooked(null)
      setLooked({ matches, remove, preview: await previewSchedule(event, matches, remove) })
    })
  const apply = () =>
    during(async () => {
      if (!looked) return
      const { matches, remove, preview } = looked
      setUndo(await changes.edit.mutateAsync({ mark: preview.mark, matches, remove }))
      setLooked(null)
    })
  /** Without a look first: for one match that was edited in full view. */
  const put = (mark: string, matches: Match[], remove: string[] = []) =>
    during(async () => {
      setUndo(await changes.edit.mutateAsync({ mark, matches, remove }))
    })
  const takeBack = () =>
    during(async () => {
      if (!undo) return
      await changes.edit.mutateAsync({ mark: undo.mark, matches: undo.undo.put, remove: undo.undo.remove })
      setUndo(null)
    })
  const said = undo === null ? null : words().event.schedule.applied(undo.touched)
  return { looked, setLooked, look, apply, put, takeBack, said, mark: undo?.mark, trouble, busy }
}
