import { useEffect, useRef, useState } from 'react'
import { enoughRounds, Refinement, type RefineTask } from '../../../../src/model/picks/order/refine.ts'
import type { PickOrder } from '../../../../src/model/picks/order/types.ts'
import { askPicks } from '../../../worker/askPicks.ts'
import { askLive, endLive } from '../../../worker/client.ts'
import type { PicksAsk, PicksEvent, Questions } from '../../../worker/protocol.ts'

type Worked = NonNullable<Questions['picksOrder']['answer']>

export interface OrderNow {
  /** What it is about. */
  key: string
  answer: Worked
  /** Refined as far as it goes. */
  order: PickOrder
}

export interface Refining {
  state: 'idle' | 'running' | 'stopped' | 'done'
  done: number
}

const lanes = ['refine 0', 'refine 1'] as const

/** The order of an event and selection, worked out in this browser: at once from scores, then by simulated matches as long as one lets it. */
export function useOrder(of: PicksEvent | null, ask: PicksAsk | null) {
  const key = of && ask ? JSON.stringify([of.key, ask]) : null
  const [now, setNow] = useState<OrderNow | null>(null)
  const [rough, setRough] = useState<PickOrder | null>(null)
  const [error, setError] = useState<Error | null>(null)
  const [refining, setRefining] = useState<Refining>({ state: 'idle', done: 0 })
  const run = useRef(0)

  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for both
  useEffect(() => {
    if (!of || !ask || key === null) return
    let left = false
    run.current++
    for (const lane of lanes) endLive(lane)
    setRefining({ state: 'idle', done: 0 })
    setError(null)
    // Whoever has just opened the page sees a first order while all matches are played.
    if (!now)
      askPicks('picksRough', { of, ask }).then(
        (first) => {
          if (!left) setRough(first)
        },
        () => {
          // The question below fails alike, and says so.
        },
      )
    askPicks('picksOrder', { of, ask }).then(
      (answer) => {
        if (!left) setNow({ key, answer, order: answer.worked.order })
      },
      (failure: Error) => {
        if (!left && failure.name !== 'AbortError') setError(failure)
      },
    )
    return () => {
      left = true
    }
  }, [key])

  useEffect(
    () => () => {
      for (const lane of lanes) endLive(lane)
    },
    [],
  )

  const refine = async () => {
    if (!of || !now || now.key !== key) return
    const own = ++run.current
    const refinement = new Refinement(now.answer.worked)
    const shares = lanes.map((_, lane) => now.answer.tasks.filter((__, k) => k % lanes.length === lane))
    setRefining({ state: 'running', done: 0 })
    try {
      for (let round = 0; round < enoughRounds; round++) {
        const played = await Promise.all(shares.map((tasks, lane) => playedBy(lane, { of, tasks, round })))
        if (run.current !== own) return
        for (const [lane, outcomes] of played.entries())
          for (const [k, each] of outcomes.entries())
            refinement.add(shares[lane]![k]!.choice, { round, outcomes: each })
        setNow((before) => (before?.key === key ? { ...before, order: refinement.order() } : before))
        setRefining({ state: round + 1 < enoughRounds ? 'running' : 'done', done: (round + 1) / enoughRounds })
      }
    } catch (failure) {
      if (run.current === own && (failure as Error).name !== 'AbortError') setError(failure as Error)
    }
  }
  const stop = () => {
    run.current++
    for (const lane of lanes) endLive(lane)
    setRefining((before) => ({ ...before, state: 'stopped' }))
  }
  return { now, rough: now ? null : rough, fresh: now !== null && now.key === key, error, refining, refine, stop }
}

const playedBy = (lane: number, ask: { of: PicksEvent; tasks: readonly RefineTask[]; round: number }) =>
  ask.tasks.length === 0 ? Promise.resolve([]) : askLive(lanes[lane]!, 'picksRound', ask)
