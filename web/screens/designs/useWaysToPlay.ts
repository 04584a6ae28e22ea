import { useEffect, useState } from 'react'
import { type Stored, useAllStored, useList } from '../../data/documents.ts'

/** The options that play a design. Known ones stay while a new one is fetched, so that the screen stays as it is. */
export function useWaysToPlay(design: string) {
  const list = useList('option')
  const all = useAllStored('option', list.data ?? [])
  const [known, setKnown] = useState<Stored<'option'>[] | undefined>(undefined)
  const complete = list.data ? all.data : undefined
  useEffect(() => {
    if (complete) setKnown(complete.filter(({ body }) => body.design === design))
  }, [complete, design])
  return {
    data: known,
    error: list.error ?? all.error,
    refetch: () => {
      void list.refetch()
      all.refetch()
    },
  }
}
