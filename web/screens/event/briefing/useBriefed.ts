import { useEffect, useRef, useState } from 'react'
import type { Behind } from '../../../../src/api/estimates/atOnce.ts'
import type { Alliance, Match } from '../../../../src/model/scouting/types.ts'
import { type Briefed, makeBriefing } from '../../../data/briefing.ts'
import type { Packed } from '../../../data/eventPack.ts'
import { readyBriefing } from '../../../worker/client.ts'

export interface BriefedState {
  /** What is read. It stays until whoever reads takes another. */
  shown: Briefed | null
  /** What would be read from what is known now; null while there is none or it is the same. */
  next: Briefed | null
  /** Something new has arrived, and what it changes is being worked out. */
  looking: boolean
  /** What the newest briefing that is here lacks, where that is known; null: nothing. */
  behind: Behind
  progress: { done: number; all: number } | null
  error: unknown
  again(): void
  take(): void
}

/** After so long the server is asked again for what it is working out (ms). */
const pause = 2000

/**
 * The briefing of a match, at once as it was made last, else made when it is opened. What arrives later is worked out beside it and never takes its place by itself:
 * nothing changes under a reader's finger.
 */
export function useBriefed(packed: Packed, of: { match: Match; alliance: Alliance }): BriefedState {
  const { match, alliance } = of
  const [shown, setShown] = useState<Briefed | null>(null)
  const [next, setNext] = useState<Briefed | null>(null)
  const [behind, setBehind] = useState<Behind>(null)
  const [working, setWorking] = useState(false)
  const [progress, setProgress] = useState<BriefedState['progress']>(null)
  const [error, setError] = useState<unknown>(null)
  const [run, setRun] = useState(0)
  const reading = useRef<Briefed | null>(null)
  const newest = useRef(packed)
  newest.current = packed
  const teams = [...match.red, ...match.blue].map(({ team }) => team).join()
  const { from } = packed.pack

  // biome-ignore lint/correctness/useExhaustiveDependencies: `from` and `teams` say what it is made of, `run` begins anew
  useEffect(() => {
    if (reading.current?.from === from) return
    let left = false
    setWorking(true)
    setError(null)
    const of = { match, alliance }
    const told = (done: number, all: number) => {
      if (!left) setProgress({ done, all })
    }
    const work = async () => {
      for (;;) {
        const made = await makeBriefing(newest.current, of, told)
        if (left) return
        // The next one may have to be made here.
        if (!made.here) readyBriefing()
        setBehind(made.behind)
        if (reading.current === null) {
          reading.current = made
          setShown(made)
        } else if (made.from !== reading.current.from) setNext(made)
        if (!made.behind) return
        await new Promise((resolve) => setTimeout(resolve, pause))
        if (left) return
      }
    }
    work()
      .catch((failure: unknown) => {
        if (!left) setError(failure)
      })
      .finally(() => {
        if (left) return
        setWorking(false)
        setProgress(null)
      })
    return () => {
      left = true
    }
  }, [from, teams, alliance, run])

  return {
    shown,
    next,
    looking: working && shown !== null,
    behind,
    progress,
    error,
    again: () => setRun(run + 1),
    take: () => {
      if (!next) return
      reading.current = next
      setShown(next)
      setNext(null)
    },
  }
}
