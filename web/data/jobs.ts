import { useCallback, useEffect, useState } from 'react'
import type { JobSummary, StoredJob } from '../../src/store/types.ts'
import { Unreachable } from './api.ts'

/** The server refused; `code` is that of its answer. */
export class JobRefused extends Error {
  readonly code: string
  constructor({ code, message }: { code: string; message: string }) {
    super(message)
    this.name = 'JobRefused'
    this.code = code
  }
}

async function asked<T>(method: string, path: string, body?: object): Promise<T> {
  const init = body ? { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } } : {}
  const response = await fetch(`/api/jobs${path}`, { method, ...init }).catch(() => null)
  if (!response) throw new Unreachable()
  const answer = await response.json().catch(() => null)
  if (response.ok) return answer as T
  throw answer?.error ? new JobRefused(answer.error) : new Unreachable()
}

/** Long computations on the server. */
export const jobs = {
  start: (job: { kind: 'match'; name: string; request: object }) => asked<JobSummary>('POST', '', job),
  get: (id: string) => asked<StoredJob>('GET', `/${id}`),
  cancel: (id: string) => asked<JobSummary>('POST', `/${id}/cancel`, {}),
  remove: (id: string) => asked<{ removed: true }>('DELETE', `/${id}`),
}

export interface FollowedJob {
  /** With its result when it is done; null until the server has answered. */
  job: (JobSummary & { request?: unknown; result?: unknown }) | null
  /** Null while nothing went wrong; a JobRefused of the code notFound where there is no such job any more. */
  error: Error | null
  again(): void
}

/** A job as it goes on, told by the server; the browser comes back by itself where the connection breaks. `id` null: none. */
export function useJob(id: string | null): FollowedJob {
  const [job, setJob] = useState<FollowedJob['job']>(null)
  const [error, setError] = useState<Error | null>(null)
  const [run, setRun] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: `run` asks again after an error
  useEffect(() => {
    setJob(null)
    setError(null)
    if (id === null) return
    let left = false
    let source: EventSource | null = null
    const read = async () => {
      try {
        const found = await jobs.get(id)
        if (left) return
        setJob(found)
        if (found.endedAt === null) listen()
      } catch (failure) {
        if (!left) setError(failure as Error)
      }
    }
    const listen = () => {
      source = new EventSource(`/api/jobs/${id}/events`)
      for (const kind of ['started', 'threadReplaced'])
        source.addEventListener(kind, ({ data }) => setJob(JSON.parse(data).job))
      source.addEventListener('progress', ({ data }) => setJob((known) => known && { ...known, ...JSON.parse(data) }))
      source.addEventListener('ended', () => {
        source?.close()
        void read()
      })
      // The browser gives up where the server answers that nothing will come, or that there is no such job.
      source.addEventListener('error', () => {
        if (source?.readyState === EventSource.CLOSED) void read()
      })
    }
    void read()
    return () => {
      left = true
      source?.close()
    }
  }, [id, run])
  return { job, error, again: useCallback(() => setRun((before) => before + 1), []) }
}
