import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { api } from '../../../data/board.ts'

export type Board = Awaited<ReturnType<typeof api.board>>
export type Apart = Awaited<ReturnType<typeof api.quarantine>>[number]

const kinds = ['records', 'schedule', 'results', 'assignments', 'people', 'devices', 'quarantine', 'drill']

/** What is on a lead's board, asked for anew whenever the server says that something changed, and after every break. */
export function useBoard(event: string) {
  const queries = useQueryClient()
  const board = useQuery({
    queryKey: ['board', event],
    queryFn: () => api.board(event),
    // Where the news do not come through, it is a little late.
    refetchInterval: 30_000,
  })
  const apart = useQuery({ queryKey: ['apart', event], queryFn: () => api.quarantine(event) })
  useEffect(() => {
    const source = new EventSource(`/api/events/${encodeURIComponent(event)}/live`)
    const anew = () => {
      void queries.invalidateQueries({ queryKey: ['board', event] })
      void queries.invalidateQueries({ queryKey: ['apart', event] })
    }
    // Whoever is no lead any more is told so by the board itself.
    source.addEventListener('people', () => void queries.invalidateQueries({ queryKey: ['session'] }))
    source.addEventListener('open', anew)
    for (const kind of kinds) source.addEventListener(kind, anew)
    return () => source.close()
  }, [event, queries])
  return { board, apart }
}
