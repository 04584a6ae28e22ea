import { useRef, useState } from 'react'
import type { OwnLineUp } from '../../../../src/model/briefing/ownLineUp.ts'
import type { Alliance, Match } from '../../../../src/model/scouting/types.ts'
import { type Briefed, briefByHand, requestFor } from '../../../data/briefing.ts'
import type { EventPack } from '../../../data/eventPack.ts'

export interface OwnPlan {
  /** The plan of a line-up of our own that was taken; null: the computed one is shown. */
  made: Briefed | null
  busy: boolean
  progress: { done: number; all: number } | null
  error: Error | null
  take(own: OwnLineUp): void
  back(): void
}

/** A line-up of one's own as the plan, worked out from the same robots as the computed one; a newer briefing puts it aside. */
export function useOwnPlan(pack: EventPack, of: { match: Match; alliance: Alliance; shown: Briefed | null }): OwnPlan {
  const { match, alliance, shown } = of
  const [made, setMade] = useState<Briefed | null>(null)
  const [progress, setProgress] = useState<OwnPlan['progress']>(null)
  const [busy, setBusy] = useState(false)
  const [error, setError] = useState<Error | null>(null)
  const run = useRef(0)
  const stop = () => {
    run.current++
    setBusy(false)
    setProgress(null)
    setError(null)
  }
  const take = async (own: OwnLineUp) => {
    if (!shown) return
    stop()
    const turn = run.current
    setBusy(true)
    const byHand = { own, best: shown.briefing.lineUps[0]!.goals }
    try {
      const plan = await briefByHand(requestFor(pack, { match, alliance }), { made: shown, byHand }, (done, all) => {
        if (run.current === turn) setProgress({ done, all })
      })
      if (run.current === turn) setMade(plan)
    } catch (failure) {
      if (run.current === turn) setError(failure as Error)
    } finally {
      if (run.current === turn) {
        setBusy(false)
        setProgress(null)
      }
    }
  }
  return {
    made: made && shown && made.from === shown.from ? made : null,
    busy,
    progress,
    error,
    take: (own) => void take(own),
    back: () => {
      stop()
      setMade(null)
    },
  }
}
