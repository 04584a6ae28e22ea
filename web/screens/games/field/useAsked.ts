import { useMemo, useState } from 'react'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import type { Problem } from '../../../../src/model/errors.ts'
import type { Route } from '../../../../src/model/field/types.ts'
import { askLive } from '../../../worker/client.ts'
import type { Kind, Questions } from '../../../worker/protocol.ts'
import { useLatest } from '../../designs/useLatest.ts'

type Answered<K extends Kind> =
  | { answer: Questions[K]['answer']; to: Questions[K]['ask'] }
  | { error: string; to: Questions[K]['ask'] }

/** The model's answer for what is on the screen now; the last one stays until the next one is there. */
function useAsked<K extends Kind>(kind: K, ask: Questions[K]['ask'] | null) {
  const [found, setFound] = useState<Answered<K> | null>(null)
  useLatest(ask, async (asked, still) => {
    let next: Answered<K>
    try {
      next = { answer: await askLive('field', kind, asked), to: asked }
    } catch (error) {
      next = { error: (error as Error).message, to: asked }
    }
    if (still.shown()) setFound(next)
  })
  return { found: ask === null ? null : found, fresh: found?.to === ask }
}

export type DrivingRobot = Pick<Robot, 'footprint' | 'drive'>

/** Where a robot of this size can not stand or get; null while nothing is known. */
export function useReach(game: Game | null, footprint: Robot['footprint']): Problem[] | null {
  const { found } = useAsked(
    'reach',
    useMemo(() => (game ? { game, footprint } : null), [game, footprint]),
  )
  if (!found) return null
  return 'answer' in found ? found.answer : [{ path: ['field', 'obstacles'], message: found.error }]
}

/** The way between two starts or spots, or the sentence why there is none. */
export function useRoute(game: Game | null, robot: DrivingRobot, from: string, to: string) {
  const { found, fresh } = useAsked(
    'travel',
    useMemo(() => (game && from && to && from !== to ? { game, robot, from, to } : null), [game, robot, from, to]),
  )
  const route: Route | null = found && 'answer' in found ? found.answer : null
  const error = found && 'error' in found ? found.error : null
  return useMemo(() => ({ route, error, fresh }), [route, error, fresh])
}
