import type { Duration } from '../../documents/types.ts'
import type { Answer, Belief, Remark, SpreadOfTime } from '../types.ts'
import type { Calculator } from './calculator.ts'
import { drawCount, drawTimes, percentile } from './draws.ts'
import { durationOf } from './durationOf.ts'
import { remark } from './remark.ts'
import { sensitivityOf } from './sensitivity.ts'
import { type Place, settle } from './settle.ts'

/** The longest time that a stage may take (s). */
export const longest = 600

/**
 * A calculator's whole answer: the time at likely numbers, its sensitivities, and its Duration. Inputs that vary from trip to
 * trip are drawn for the Duration, inputs of unknown level for the belief, each with the other ones likely.
 */
export function answer<Settled, Quantities, Curves>(
  calculator: Calculator<Settled, Quantities, Curves>,
  input: object,
): Answer<Quantities, Curves> {
  const { likely, places } = settle<Settled>(input)
  const solved = calculator.solve(likely)
  if (!solved.possible) return solved
  if (solved.seconds > longest) {
    const { seconds, quantities, warnings } = solved
    return { possible: false, why: tooSlow(seconds), quantities, warnings }
  }
  const trips = places.filter(({ spread }) => spread.of !== 'level')
  const levels = places.filter(({ spread }) => spread.of === 'level')
  const seconds = calculator.asBuilt?.(likely) ?? calculator.seconds
  const spread = spreadOf(seconds, likely, trips)
  const belief = beliefOf(calculator.seconds, likely, levels)
  return {
    ...solved,
    duration: spread?.duration ?? { kind: 'fixed', seconds: solved.seconds },
    spread: spread?.told ?? null,
    belief,
    sensitivity: sensitivityOf(calculator, likely, places),
    warnings: [...solved.warnings, ...shareWarnings(spread?.told, belief)],
  }
}

/** Why a time that is longer than any stage may take is no answer. */
export const tooSlow = (seconds: number): Remark =>
  remark('tooSlow', 'It would take {seconds} s; no stage may take more than {longest} s', { seconds, longest })

type Seconds<Settled> = (drawn: Settled) => number | null

function spreadOf<Settled>(seconds: Seconds<Settled>, likely: Settled, places: readonly Place[]) {
  if (places.length === 0) return null
  const times = timesWithin(seconds, likely, places)
  if (times.length < 3) return null
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  const sd = Math.sqrt(times.reduce((sum, time) => sum + (time - mean) ** 2, 0) / times.length)
  const told: SpreadOfTime = {
    mean,
    sd,
    p10: percentile(times, 0.1),
    p90: percentile(times, 0.9),
    draws: drawCount,
    impossible: 1 - times.length / drawCount,
  }
  const duration: Duration = durationOf(times)
  return { told, duration }
}

function beliefOf<Settled>(seconds: Seconds<Settled>, likely: Settled, places: readonly Place[]): Belief | null {
  if (places.length === 0) return null
  const times = timesWithin(seconds, likely, places)
  if (times.length < 3) return null
  const [low, middle, high] = [0.1, 0.5, 0.9].map((p) => percentile(times, p)) as [number, number, number]
  return { low, likely: middle, high, impossible: 1 - times.length / drawCount }
}

const timesWithin = <Settled>(seconds: Seconds<Settled>, likely: Settled, places: readonly Place[]) =>
  drawTimes(seconds, likely, places).filter((time) => time <= longest)

function shareWarnings(spread: SpreadOfTime | undefined, belief: Belief | null): Remark[] {
  const warnings: Remark[] = []
  if (spread && spread.impossible > 0) {
    const share = 100 * spread.impossible
    const text =
      'In {share} % of the trips that the spreads allow it can not be done; the duration is that of the others'
    warnings.push(remark('someTripsImpossible', text, { share }))
  }
  if (belief && belief.impossible > 0) {
    const share = 100 * belief.impossible
    const text = 'With {share} % chance it can not be done at all, by what is known of its inputs'
    warnings.push(remark('perhapsImpossible', text, { share }))
  }
  return warnings
}
