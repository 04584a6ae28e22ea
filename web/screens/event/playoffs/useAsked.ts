import { useEffect, useState } from 'react'
import { askLive } from '../../../worker/client.ts'
import type { Kind, Questions } from '../../../worker/protocol.ts'

/** What the worker of picks says to a question; another one asks anew, and the answer before stays until then. */
export function useAsked<K extends Kind>(kind: K, ask: Questions[K]['ask'] | null, key: string) {
  const [told, setTold] = useState<{ key: string; answer: Questions[K]['answer'] } | null>(null)
  const [error, setError] = useState<Error | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for the question
  useEffect(() => {
    if (!ask) return
    let left = false
    setError(null)
    askLive('picks', kind, ask).then(
      (answer) => {
        if (!left) setTold({ key, answer })
      },
      (failure: Error) => {
        if (!left && failure.name !== 'AbortError') setError(failure)
      },
    )
    return () => {
      left = true
    }
  }, [kind, key])
  return { answer: told?.answer ?? null, fresh: told?.key === key, error }
}
