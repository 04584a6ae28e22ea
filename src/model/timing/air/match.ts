import { heatRatio } from '../pneumatic/flow.ts'
import { type Level, refill, type Supply } from './refill.ts'

/** Strokes that are done together at some time: their volume behind the regulator (m³). */
export interface Draw {
  at: number
  volume: number
}

export interface Course {
  /** At each draw: pressure before and after it, isothermal, and by the cautious bound (Pa). */
  draws: { at: number; before: number; after: number; beforeAdiabatic: number; afterAdiabatic: number }[]
  endPressure: number
  endAdiabatic: number
  /** First draw that leaves less than the working pressure; null: none. */
  lost: number | null
  lostAdiabatic: number | null
  /** Seconds that the compressor ran. */
  ran: number
}

/**
 * Pressure of the tanks through a match. Each draw takes its volume at the working pressure, or, once there is less, levels out
 * with the tanks; between draws the compressor works and the leak takes.
 *
 * A tank that warms up at once loses p·v/V. One that gets no heat at all loses γ times as much (V·dp = −γ·R·T·dm, the first
 * law for what flows out), which is the cautious bound; it is taken as if nothing warmed up all match.
 */
export function course(
  supply: Supply,
  { stored, working, until }: { stored: number; working: number; until: number },
  draws: readonly Draw[],
): Course {
  const follow = (factor: number) => {
    let level: Level & { ran: number } = { pressure: stored, running: false, ran: 0 }
    let [time, ran] = [0, 0]
    const steps = draws.map(({ at, volume }) => {
      level = refill(supply, level, at - time)
      ran += level.ran
      time = at
      const before = level.pressure
      const share = (factor * volume) / supply.volume
      const after = Math.max(
        supply.ambient,
        before - working * share >= working ? before - working * share : before / (1 + share),
      )
      level = { ...level, pressure: after }
      return { before, after }
    })
    const end = refill(supply, level, Math.max(0, until - time))
    return { steps, end: end.pressure, ran: ran + end.ran }
  }
  const [isothermal, adiabatic] = [follow(1), follow(heatRatio)]
  return {
    draws: draws.map(({ at }, i) => ({
      at,
      ...isothermal.steps[i]!,
      beforeAdiabatic: adiabatic.steps[i]!.before,
      afterAdiabatic: adiabatic.steps[i]!.after,
    })),
    endPressure: isothermal.end,
    endAdiabatic: adiabatic.end,
    lost: firstBelow(isothermal.steps, working),
    lostAdiabatic: firstBelow(adiabatic.steps, working),
    ran: isothermal.ran,
  }
}

/** A hair of rounding does not lose the pressure. */
function firstBelow(steps: readonly { after: number }[], working: number): number | null {
  const found = steps.findIndex(({ after }) => after < working * (1 - 1e-12))
  return found < 0 ? null : found
}
