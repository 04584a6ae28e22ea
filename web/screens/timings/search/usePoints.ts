import { useEffect, useMemo, useRef, useState } from 'react'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import { type Gearing, placesToPlan, type SweepResult } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { askModel } from '../../../worker/client.ts'
import { can, type PlannedRows, rowsOf } from './rows.ts'

/** Plans that a worker makes before it tells them: a stop loses no more than those. */
const together = 4

interface Found {
  of: string
  planned: PlannedRows
  /** Points of the design as it is, on the same grid; null where its mechanism can not do it. */
  now: number | null
  complete: boolean
}

interface Asked {
  game: Game
  option: Option
  mechanism: string
  result: SweepResult | null
  /** The gearing that the mechanism has. */
  present: Gearing
}

/** Points per match over a sweep, asked for by a person: long work that grows, can be stopped, and keeps what it has. */
export function usePoints({ game, option, mechanism, result, present }: Asked) {
  const key = useMemo(() => {
    const gearings = result?.points.map(({ reduction, motors }) => [reduction, motors])
    return JSON.stringify([game, option, mechanism, gearings])
  }, [game, option, mechanism, result])
  const [found, setFound] = useState<Found | null>(null)
  const [running, setRunning] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const stop = useRef<AbortController | null>(null)
  // Points of another design are of no use any more.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key is what it follows
  useEffect(() => () => stop.current?.abort(), [key])
  const current = found?.of === key ? found : null
  const start = async () => {
    if (!result) return
    const controller = new AbortController()
    stop.current = controller
    setRunning(true)
    setTrouble(null)
    const ask = (at: Gearing[]) =>
      askModel('gearings', { game, option, mechanism, at }, { signal: controller.signal, asked: true })
    try {
      const known = new Map([...(current?.planned ?? [])].map(([motors, row]) => [motors, new Map(row)]))
      const now = current ? current.now : (await ask([present]))[0]!.points
      const tell = (complete: boolean) => setFound({ of: key, planned: new Map(known), now, complete })
      for (;;) {
        const places = rowsOf(result, known).flatMap(({ motors, points }) =>
          placesToPlan(points.map(can), known.get(motors) ?? new Map()).map((place) => ({
            motors,
            place,
            reduction: points[place]!.reduction,
          })),
        )
        if (places.length === 0) break
        for (let from = 0; from < places.length; from += together) {
          const some = places.slice(from, from + together)
          const answers = await ask(some.map(({ reduction, motors }) => ({ reduction, motors })))
          some.forEach(({ motors, place }, index) => {
            known.set(motors, new Map(known.get(motors)).set(place, answers[index]!.points))
          })
          tell(false)
        }
      }
      tell(true)
    } catch (error) {
      setTrouble(controller.signal.aborted ? words().search.stopped : (error as Error).message)
    } finally {
      if (stop.current === controller) setRunning(false)
    }
  }
  return {
    planned: current?.planned ?? none,
    now: current?.now ?? null,
    complete: current?.complete ?? false,
    running,
    trouble,
    start: () => void start(),
    stop: () => stop.current?.abort(),
  }
}

const none: PlannedRows = new Map()
