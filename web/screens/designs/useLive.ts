import { useEffect, useLayoutEffect, useRef, useState } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { LegReport } from '../../../src/model/leg/types.ts'
import type { QuickPlan } from '../../../src/model/plan/types.ts'
import { askLive } from '../../worker/client.ts'
import { notePoints, takePress } from '../../worker/latency.ts'
import type { ShownLeg } from './cycle.ts'

export interface Live {
  plan: QuickPlan | null
  /** The option that the plan belongs to. */
  option: Option | null
  legs: { leg: ShownLeg; report: LegReport }[]
  error: Error | null
}

interface Wanted {
  game: Game
  option: Option
  legs: ShownLeg[]
}

/**
 * Points, policy and bars that follow every edit. One question is under way at a time; what was typed meanwhile is
 * asked next, so that dragging never builds a queue. What can not be computed keeps the last answer.
 */
export function useLive(wanted: Wanted | null): Live {
  const [live, setLive] = useState<Live & { press: number | null }>({
    plan: null,
    option: null,
    legs: [],
    error: null,
    press: null,
  })
  const next = useRef<Wanted | null>(null)
  const running = useRef(false)
  const planned = useRef<Wanted | null>(null)
  const shown = useRef(true)

  useEffect(() => {
    shown.current = true
    return () => {
      shown.current = false
    }
  }, [])

  // Before the paint, so that the question is on its way while the browser draws the typed figure.
  useLayoutEffect(() => {
    if (!wanted) return
    next.current = wanted
    if (!running.current) void run()

    async function run() {
      running.current = true
      while (next.current && shown.current) {
        const asked = next.current
        next.current = null
        const press = takePress()
        try {
          // Other legs of the same design need no new plan.
          if (planned.current?.option !== asked.option || planned.current.game !== asked.game) {
            const plan = await askLive('quick', { game: asked.game, option: asked.option })
            planned.current = asked
            setLive((before) => ({ ...before, plan, option: asked.option, error: null, press }))
          }
          const reports = await askLive('legs', {
            game: asked.game,
            robot: asked.option.robot,
            legs: asked.legs.map(({ request }) => request),
          })
          const legs = asked.legs.map((leg, index) => ({ leg, report: reports[index]! }))
          setLive((before) => ({ ...before, legs, press: null }))
        } catch (error) {
          planned.current = null
          setLive((before) => ({ ...before, error: error as Error, press: null }))
        }
      }
      running.current = false
    }
  }, [wanted])

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new plan is what ends the measurement
  useLayoutEffect(() => notePoints(live.press), [live.plan])

  return live
}
