import { useEffect, useRef, useState } from 'react'
import { askLive, endLive } from '../../worker/client.ts'
import type { Questions } from '../../worker/protocol.ts'

export type MatchAsk = Omit<Questions['match']['ask'], 'from' | 'to' | 'soFar'>
type Answer = Questions['match']['answer']

export interface Played {
  /** Null until the first matches are played. */
  answer: Answer | null
  /** Our lead in each match so far. */
  leads: readonly number[]
  /** What the answer is about. */
  asked: MatchAsk | null
  /** Whether that is what is asked now. */
  fresh: boolean
  state: 'idle' | 'running' | 'stopped' | 'done' | 'failed'
  done: number
  error: Error | null
  /** Ends it with what it has by then. */
  stop(): void
  goOn(): void
}

/** So many matches are asked for together: few at first, so that there is soon something to see, and whole blocks always. */
const together = (played: number): number => (played === 0 ? 500 : played < 2000 ? 1500 : 3000)

const none: readonly number[] = []

interface Known {
  key: string
  ask: MatchAsk
  answer: Answer
  leads: readonly number[]
}

/**
 * Plays matches in parts, each added to those before, until there are `replicates`. Other robots begin anew, more matches of
 * the same go on from where they were. `ask` null: nothing to play yet.
 */
export function usePlayed(ask: MatchAsk | null, replicates: number): Played {
  const key = ask && JSON.stringify(ask)
  const known = useRef<Known | null>(null)
  const [shown, setShown] = useState<Known | null>(null)
  const [run, setRun] = useState(0)
  const [state, setState] = useState<Played['state']>('idle')
  const [done, setDone] = useState(0)
  const [error, setError] = useState<Error | null>(null)
  const stopping = useRef(false)

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `ask`; `run` begins again what was stopped
  useEffect(() => {
    stopping.current = false
    setError(null)
    if (!ask || key === null) {
      setState('idle')
      return
    }
    // The worker that knows these robots goes on to the next question; only its answer is no longer looked at.
    let left = false
    const before = known.current?.key === key ? known.current : null
    const usable = before && before.answer.report.replicates <= replicates ? before : null
    let soFar = usable?.answer.soFar ?? null
    let leads = usable?.leads ?? []
    const play = async () => {
      let from = soFar?.matches ?? 0
      setDone(from)
      setState('running')
      while (from < replicates && !stopping.current) {
        const to = Math.min(replicates, from + together(from))
        const begun = from
        const answer = await askLive('match', 'match', { ...ask, from, to, soFar }, (count) => {
          if (!left) setDone(begun + count)
        })
        if (left) return
        from = to
        soFar = answer.soFar
        leads = [...leads, ...answer.leads]
        known.current = { key, ask, answer, leads }
        setShown(known.current)
        setDone(to)
      }
      setState(from < replicates ? 'stopped' : 'done')
    }
    play().catch((failure: unknown) => {
      if (left || stopping.current) return
      // The worker was ended for the other line-up's sake.
      if ((failure as Error).name === 'AbortError') return setState('stopped')
      setError(failure as Error)
      setState('failed')
    })
    return () => {
      left = true
    }
  }, [key, replicates, run])

  const fresh = shown !== null && shown.key === key
  return {
    answer: shown?.answer ?? null,
    leads: shown?.leads ?? none,
    asked: shown?.ask ?? null,
    fresh,
    state,
    done,
    error,
    stop: () => {
      stopping.current = true
      // Before the first matches there is nothing to keep: the robots are being worked out, which takes seconds.
      if (!fresh) {
        endLive('match')
        setState('stopped')
      }
    },
    goOn: () => setRun(run + 1),
  }
}
