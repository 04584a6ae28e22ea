import { useLayoutEffect, useRef, useState } from 'react'
import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'
import type { LegReport } from '../../../src/model/leg/types.ts'
import type { QuickPlan } from '../../../src/model/plan/types.ts'
import { askLive } from '../../worker/client.ts'
import { notePoints, takePress } from '../../worker/latency.ts'
import type { ShownLeg } from './cycle.ts'
import { useLatest } from './useLatest.ts'

export interface Live {
  /** Expected points of the option on the screen; null until there is a first plan. */
  total: number | null
  /** Whether the total is that of the exact plan, and not yet its last one moved by what the edit changes. */
  settled: boolean
  /** The newest exact plan, and the option that it belongs to. */
  exact: { option: Option; plan: QuickPlan } | null
  /** The bars' reports, and the robot that they are of. */
  legs: { leg: ShownLeg; report: LegReport; robot: Robot }[]
  error: Error | null
}

/** While somebody types or draws on, the exact plan waits (ms), so that the points at once have the processor. */
const pauseBeforeExact = 250

interface Wanted {
  game: Game
  option: Option
  legs: ShownLeg[]
}

interface Estimate {
  option: Option
  points: number
}

/**
 * Points, bars and policy that follow every edit. At once: the last exact plan's points, moved by the difference
 * that a coarse plan finds between the two designs (the same error on both sides cancels). Behind it: the exact plan.
 */
export function useLive(wanted: Wanted | null): Live {
  const [exact, setExact] = useState<Live['exact']>(null)
  const [legs, setLegs] = useState<Live['legs']>([])
  const [error, setError] = useState<Error | null>(null)
  const [estimate, setEstimate] = useState<Estimate | null>(null)
  const estimates = useRef(new WeakMap<Option, number>())
  const underWay = useRef(new WeakMap<Option, Promise<number>>())
  const press = useRef<{ start: number; option: Option } | null>(null)

  const estimated = async (game: Game, option: Option): Promise<number> => {
    const under = underWay.current.get(option) ?? askLive('at once', 'estimate', { game, option })
    underWay.current.set(option, under)
    const points = await under
    estimates.current.set(option, points)
    return points
  }

  useLatest(wanted, async (asked, still) => {
    const start = takePress()
    if (start !== null) press.current = { start, option: asked.option }
    try {
      const points = await estimated(asked.game, asked.option)
      if (!still.shown()) return
      setEstimate({ option: asked.option, points })
      setError(null)
    } catch (failed) {
      if (still.shown()) setError(failed as Error)
    }
  })

  useLatest(wanted, async (asked, still) => {
    try {
      // The points first: they are waited for.
      await estimated(asked.game, asked.option)
      const requests = asked.legs.map(({ request }) => request)
      const reports = await askLive('bars', 'legs', { game: asked.game, robot: asked.option.robot, legs: requests })
      // A range whose numbers contradict each other has no mean: the bars stay those of the last one that has.
      if (still.shown() && reports.every(({ mean }) => Number.isFinite(mean)))
        setLegs(asked.legs.map((leg, index) => ({ leg, report: reports[index]!, robot: asked.option.robot })))
    } catch {
      // The plan of the same design says what is wrong with it.
    }
  })

  useLatest(wanted, async (asked, still) => {
    if (exact?.option === asked.option) return
    try {
      await estimated(asked.game, asked.option)
      if (exact) {
        await new Promise((resolve) => setTimeout(resolve, pauseBeforeExact))
        if (!still.newest()) return
      }
      const plan = await askLive('exact', 'quick', { game: asked.game, option: asked.option })
      if (still.shown()) setExact({ option: asked.option, plan })
    } catch (failed) {
      if (still.shown()) setError(failed as Error)
    }
  })

  const option = wanted?.option ?? null
  const settled = exact !== null && exact.option === option
  const base = exact ? estimates.current.get(exact.option) : undefined
  const moved = estimate && base !== undefined ? estimate.points - base : 0
  const total = exact === null ? null : settled ? exact.plan.total : exact.plan.total + moved
  const totalOf = settled ? exact.option : (estimate?.option ?? null)

  useLayoutEffect(() => {
    if (press.current === null || press.current.option !== totalOf || total === null) return
    notePoints(press.current.start)
    press.current = null
  }, [totalOf, total])

  return { total, settled, exact, legs, error }
}
