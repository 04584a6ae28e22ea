import { useCallback, useEffect, useRef, useState } from 'react'
import type { SeedsReport } from '../../src/model/picks/seeds/types.ts'
import { client, said } from './api.ts'

export interface Seeds {
  counted: number
  coming: number
  records: number
  report: SeedsReport
}

export type SeedsState =
  | { at: 'work'; done: number; total: number | null }
  | { at: 'stopped'; done: number; total: number }
  | { at: 'done' }
  | { at: 'trouble'; error: unknown }

/** Matches that the server simulates between two words of progress. */
const atOnce = 8

/**
 * Final ranks: the server simulates the matches to come some at a time, so that one sees how far it is and can stop; what is done is kept
 * there. The last answer stays while a new one is made.
 */
export function useSeeds(event: string, team: string | null) {
  const [state, setState] = useState<SeedsState>({ at: 'work', done: 0, total: null })
  const [found, setFound] = useState<{ of: string; seeds: Seeds; at: Date } | null>(null)
  const run = useRef(0)
  const start = useCallback(async () => {
    if (team === null) return
    run.current += 1
    const own = run.current
    const wanted = () => run.current === own
    setState({ at: 'work', done: 0, total: null })
    try {
      for (let left = true; left; ) {
        const { done, total } = await said(client.seeds.seedLots.mutate({ event, most: atOnce }))
        if (!wanted()) return
        left = done < total
        setState({ at: 'work', done, total })
      }
      const seeds = (await said(client.seeds.seeds.query({ event, team }))) as unknown as Seeds
      if (!wanted()) return
      setFound({ of: team, seeds, at: new Date() })
      setState({ at: 'done' })
    } catch (error) {
      if (wanted()) setState({ at: 'trouble', error })
    }
  }, [event, team])
  useEffect(() => {
    void start()
    return () => {
      run.current += 1
    }
  }, [start])
  const stop = () => {
    run.current += 1
    setState((now) => (now.at === 'work' ? { at: 'stopped', done: now.done, total: now.total ?? 0 } : now))
  }
  return { state, found: found?.of === team ? found : null, start: () => void start(), stop }
}
