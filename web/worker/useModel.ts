import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { askModel } from './client.ts'
import type { Kind, Questions } from './protocol.ts'

const names = new WeakMap<object, string>()

/** A question as a text. Documents are long and asked about again at every drawing: each is written out once. */
export function nameOf(kind: Kind, ask: object | null): string {
  if (ask === null) return kind
  const known = names.get(ask) ?? JSON.stringify(['model', kind, ask])
  names.set(ask, known)
  return known
}

/**
 * An answer of the model for documents on the screen, computed in a worker and kept while they stay the same.
 * `ask` null: not yet. The last answer stays on the screen while the next one is on its way. `asked`: a person waits for
 * it, so that it does not queue behind what the screen computes by itself.
 */
export function useModel<K extends Kind>(kind: K, ask: Questions[K]['ask'] | null, asked = false) {
  const [progress, setProgress] = useState<{ done: number; total: number } | null>(null)
  const query = useQuery({
    queryKey: ['model', kind, ask],
    queryKeyHashFn: () => nameOf(kind, ask),
    queryFn: async ({ signal }) => {
      setProgress(null)
      return askModel(kind, ask!, { signal, asked, progress: (done, total) => setProgress({ done, total }) })
    },
    enabled: ask !== null,
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 300_000,
    retry: false,
    networkMode: 'always',
    placeholderData: keepPreviousData,
  })
  return { ...query, progress }
}
