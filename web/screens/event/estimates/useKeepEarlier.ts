import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { EventRecord } from '../../../../src/model/scouting/types.ts'
import { useChanges } from '../../../data/documents.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'

export type EarlierChoice = NonNullable<EventRecord['earlier']>

/** Saves which earlier event counts, with the event; `before` is what counted until the last save from here. */
export function useKeepEarlier(page: EventPage) {
  const { save } = useChanges()
  const queries = useQueryClient()
  const [before, setBefore] = useState<{ choice: EarlierChoice | undefined } | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const keep = async (choice: EarlierChoice | undefined): Promise<boolean> => {
    setTrouble(null)
    const { revision: base } = page.event
    const { earlier, ...body } = page.event.body
    const next = choice ? { ...body, earlier: choice } : body
    try {
      const outcome = await save.mutateAsync({ kind: 'event', id: body.id, name: body.name, body: next, base })
      if ('conflict' in outcome) {
        setTrouble(words().earlier.conflict)
        return false
      }
      setBefore({ choice: earlier })
      await queries.invalidateQueries({ queryKey: ['event', body.id, 'estimates'] })
      return true
    } catch (error) {
      setTrouble((error as Error).message)
      return false
    }
  }
  return { save: keep, pending: save.isPending, before, trouble }
}
