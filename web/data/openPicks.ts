import type { QueryClient } from '@tanstack/react-query'
import { packQuery } from './eventPack.ts'
import { keptRatings } from './picksDatabase.ts'
import { ratingsQuery } from './ratings.ts'
import { linesQuery } from './selection.ts'

/** Asks for all that a page of picks is made of while it is drawn for the first time, side by side. */
export function openPicks(queries: QueryClient, event: string): void {
  void queries.prefetchQuery(packQuery(event, queries))
  void queries.prefetchQuery(linesQuery(event))
  void keptRatings(event).then((kept) => {
    const key = kept && ratingsQuery(event, kept.mark).queryKey
    if (key && !queries.getQueryData(key)) queries.setQueryData(key, kept)
  })
}
