import { type Stored, useAllStored, useList } from '../../data/documents.ts'

/** The options that play a design. */
export function useWaysToPlay(design: string) {
  const list = useList('option')
  const all = useAllStored('option', list.data ?? [])
  const data: Stored<'option'>[] | undefined =
    list.data && all.data ? all.data.filter(({ body }) => body.design === design) : undefined
  return {
    data,
    error: list.error ?? all.error,
    refetch: () => {
      void list.refetch()
      all.refetch()
    },
  }
}
