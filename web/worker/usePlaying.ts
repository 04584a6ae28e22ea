import { useEffect, useRef, useState } from 'react'
import { afterDrawing } from '../charts/turns.ts'
import { endLive } from './client.ts'

export interface Playing<Ask, Answer> {
  /** Null until the first matches are played. */
  answer: Answer | null
  /** What the answer is about. */
  asked: Ask | null
  /** Whether that is what is asked now. */
  fresh: boolean
  state: 'idle' | 'running' | 'stopped' | 'done' | 'failed'
  done: number
  error: Error | null
  /** Ends it with what it has by then. */
  stop(): void
  goOn(): void
}

/** How long it goes on: to so many matches, or fewer where the answer is as precise as asked; null: all of them. */
export interface Until {
  replicates: number
  precision: number | null
}

/** What is played: matches `from` … `to − 1` added to those of the answer before, and how many an answer is made of. */
export interface Game<Ask, Answer> {
  play(
    ask: Ask,
    part: { from: number; to: number; before: Answer | null; precision: number | null },
    progress: (count: number) => void,
  ): Promise<Answer>
  played(answer: Answer): number
  /** Whether an answer is as precise as asked. */
  precise(answer: Answer, precision: number | null): boolean
}

/** So many matches are asked for together: few at first, so that there is soon something to see, and whole blocks always. */
const together = (played: number): number => (played === 0 ? 500 : played < 2000 ? 1500 : 3000)

interface Known<Ask, Answer> {
  key: string
  ask: Ask
  answer: Answer
  /** With which it was played. */
  precision: number | null
}

/**
 * Plays matches in parts, each added to those before, until there are enough. Another question begins anew, more matches
 * of the same go on from where they were. `ask` null: nothing to play yet. `game` must stay the same object.
 */
export function usePlaying<Ask, Answer>(
  ask: Ask | null,
  { replicates, precision }: Until,
  game: Game<Ask, Answer>,
): Playing<Ask, Answer> {
  const key = ask && JSON.stringify(ask)
  const known = useRef<Known<Ask, Answer> | null>(null)
  const [shown, setShown] = useState<Known<Ask, Answer> | null>(null)
  const [run, setRun] = useState(0)
  const [state, setState] = useState<Playing<Ask, Answer>['state']>('idle')
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
    // Fewer matches, or a coarser precision that would have ended them earlier, begin anew: an address has one answer.
    const isPrefix = ({ answer, precision: had }: Known<Ask, Answer>) =>
      game.played(answer) <= replicates && (had === precision || !game.precise(answer, precision))
    const kept = known.current?.key === key ? known.current : null
    let before: Answer | null = kept && isPrefix(kept) ? kept.answer : null
    const play = async () => {
      let from = before ? game.played(before) : 0
      setDone(from)
      setState('running')
      const enough = () => from >= replicates || (before !== null && game.precise(before, precision))
      while (!enough() && !stopping.current) {
        const to = Math.min(replicates, from + together(from))
        const begun = from
        const answer: Answer = await game.play(ask, { from, to, before, precision }, (count) => {
          if (!left) setDone(begun + count)
        })
        if (left) return
        from = game.played(answer)
        before = answer
        known.current = { key, ask, answer, precision }
        setShown(known.current)
        setDone(from)
        await afterDrawing()
        if (left) return
      }
      setState(enough() ? 'done' : 'stopped')
    }
    play().catch((failure: unknown) => {
      if (left || stopping.current) return
      // The worker was ended for another question's sake.
      if ((failure as Error).name === 'AbortError') return setState('stopped')
      setError(failure as Error)
      setState('failed')
    })
    return () => {
      left = true
    }
  }, [key, replicates, precision, run])

  const fresh = shown !== null && shown.key === key
  return {
    answer: shown?.answer ?? null,
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
