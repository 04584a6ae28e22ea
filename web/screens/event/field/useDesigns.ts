import { useEffect, useState } from 'react'
import { type Stored, useAllStored, useList } from '../../../data/documents.ts'

/** All designs of a game. Known ones stay while a new one is fetched, so that the screen stays as it is. */
export function useDesigns(game: string) {
  const list = useList('design')
  const all = useAllStored('design', list.data ?? [])
  const [known, setKnown] = useState<Stored<'design'>[] | undefined>(undefined)
  const complete = list.data ? all.data : undefined
  useEffect(() => {
    if (complete) setKnown(complete.filter(({ body }) => body.game === game))
  }, [complete, game])
  return {
    data: known,
    error: list.error ?? all.error,
    refetch: () => {
      void list.refetch()
      all.refetch()
    },
  }
}
