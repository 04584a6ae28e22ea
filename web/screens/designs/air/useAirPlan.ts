import { useMemo, useRef } from 'react'
import type { Game, Option, Robot } from '../../../../src/model/documents/types.ts'
import type { AirPlan } from '../../../../src/model/timing/air/airPlan.ts'
import { useModel } from '../../../worker/useModel.ts'

/** What is known of a robot's stored air in the plan. */
export interface AirAsked {
  /** The newest answer, and the robot that it is of. */
  answer: AirPlan | null
  of: Robot | null
  error: Error | null
  /** Nothing is computed, because something is wrong with the design. */
  waits: boolean
  again(): void
}

/**
 * Stored air of an option once its design has stood still; nothing is asked for a robot without.
 * @param settled the option, or null while it changes
 * @param waits whether something is wrong with it
 */
export function useAirPlan(game: Game, settled: Option | null, waits: boolean): AirAsked {
  const ask = useMemo(() => (settled?.robot.air ? { game, option: settled } : null), [game, settled])
  const asked = useModel('airPlan', ask)
  const last = useRef<{ answer: AirPlan; of: Robot } | null>(null)
  if (ask && asked.data && !asked.isPlaceholderData) last.current = { answer: asked.data, of: ask.option.robot }
  const { answer, of } = last.current ?? { answer: null, of: null }
  const error = ask ? asked.error : null
  const { refetch } = asked
  return useMemo(() => ({ answer, of, error, waits, again: () => void refetch() }), [answer, of, error, waits, refetch])
}
