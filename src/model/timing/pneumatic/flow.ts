import type { Valve } from '../parts.ts'

/** Reference atmosphere of ISO 6358 (1989) and ISO 8778: 100 kPa, 293.15 K. Flows are volumes of air in this state. */
export const reference = { pressure: 100_000, temperature: 293.15 }

/** Ratio of specific heats of air. */
export const heatRatio = 1.4

interface Across {
  /** Absolute (Pa). */
  upstream: number
  downstream: number
  /** Of the air upstream (K). */
  temperature: number
}

type Path = Pick<Valve, 'conductance' | 'criticalRatio'>

/**
 * Free air through a flow path (m³/s): choked below the critical pressure ratio, an ellipse from there to nothing at equal
 * pressures.
 *
 * Source: ISO 6358-1:2013, q = C·p₁·√(T₀/T₁)·√(1 − ((p₂/p₁ − b)/(1 − b))²), the root being 1 where p₂/p₁ ≤ b.
 */
export function freeFlow({ conductance, criticalRatio }: Path, { upstream, downstream, temperature }: Across): number {
  const choked = conductance * upstream * Math.sqrt(reference.temperature / temperature)
  const ratio = downstream / upstream
  if (ratio <= criticalRatio) return choked
  if (ratio >= 1) return 0
  return choked * Math.sqrt(1 - ((ratio - criticalRatio) / (1 - criticalRatio)) ** 2)
}

export const isChoked = ({ criticalRatio }: Path, { upstream, downstream }: Omit<Across, 'temperature'>): boolean =>
  downstream / upstream <= criticalRatio

/** Ratio above which a chamber is filled and emptied by a straight line. */
const laminar = 0.99

/**
 * The same for following a pressure in time: flow from the first to the second pressure, negative back. Close to equal
 * pressures the ellipse has an endless slope, which neither air nor a solver has: the last hundredth is a straight line,
 * without a jump. Made once for a path, because it is asked for thousands of times.
 */
export function chamberFlow(path: Path, temperature: number): (from: number, to: number) => number {
  const { conductance, criticalRatio } = path
  const perPascal = conductance * Math.sqrt(reference.temperature / temperature)
  const edge = Math.max(laminar, criticalRatio)
  const atEdge = freeFlow(path, { upstream: 1, downstream: edge, temperature })
  const oneWay = (upstream: number, downstream: number) => {
    const ratio = downstream / upstream
    if (ratio <= criticalRatio) return perPascal * upstream
    if (ratio > edge) return (atEdge * upstream * (1 - ratio)) / (1 - edge)
    const beyond = (ratio - criticalRatio) / (1 - criticalRatio)
    return perPascal * upstream * Math.sqrt(1 - beyond * beyond)
  }
  return (from, to) => (to > from ? -oneWay(to, from) : oneWay(from, to))
}
