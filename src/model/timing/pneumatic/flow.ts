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

export type FlowPath = Pick<Valve, 'conductance' | 'criticalRatio'>

/**
 * Free air through a flow path (m³/s): choked below the critical pressure ratio, an ellipse from there to nothing at equal
 * pressures.
 *
 * Source: ISO 6358-1:2013, q = C·p₁·√(T₀/T₁)·√(1 − ((p₂/p₁ − b)/(1 − b))²), the root being 1 where p₂/p₁ ≤ b.
 */
export function freeFlow(
  { conductance, criticalRatio }: FlowPath,
  { upstream, downstream, temperature }: Across,
): number {
  const choked = conductance * upstream * Math.sqrt(reference.temperature / temperature)
  const ratio = downstream / upstream
  if (ratio <= criticalRatio) return choked
  if (ratio >= 1) return 0
  return choked * Math.sqrt(1 - ((ratio - criticalRatio) / (1 - criticalRatio)) ** 2)
}

export const isChoked = ({ criticalRatio }: FlowPath, { upstream, downstream }: Omit<Across, 'temperature'>): boolean =>
  downstream / upstream <= criticalRatio

/** Ratio above which a chamber is filled and emptied by a straight line. */
export const laminar = 0.99

/** A flow path as numbers, made once: a motion asks for its flow thousands of times. */
export interface FlowLaw {
  /** Free air of a choked flow (m³/s) for each Pa upstream. */
  perPascal: number
  criticalRatio: number
  /** Ratio at which the straight line begins, and its slope: flow over what the ratio lacks to 1, for each Pa upstream. */
  edge: number
  slope: number
}

export function flowLaw(path: FlowPath, temperature: number): FlowLaw {
  const { conductance, criticalRatio } = path
  const edge = Math.max(laminar, criticalRatio)
  return {
    perPascal: conductance * Math.sqrt(reference.temperature / temperature),
    criticalRatio,
    edge,
    slope: freeFlow(path, { upstream: 1, downstream: edge, temperature }) / (1 - edge),
  }
}

/**
 * The same as `freeFlow` for following a pressure in time: flow from the first to the second pressure, negative back. Close to
 * equal pressures the ellipse has an endless slope, which neither air nor a solver has: the last hundredth is a straight
 * line, without a jump.
 */
export function flowBetween(law: FlowLaw, from: number, to: number): number {
  return to > from ? -oneWay(law, to, from) : oneWay(law, from, to)
}

function oneWay({ perPascal, criticalRatio, edge, slope }: FlowLaw, upstream: number, downstream: number): number {
  const ratio = downstream / upstream
  if (ratio <= criticalRatio) return perPascal * upstream
  if (ratio > edge) return slope * upstream * (1 - ratio)
  const beyond = (ratio - criticalRatio) / (1 - criticalRatio)
  return perPascal * upstream * Math.sqrt(1 - beyond * beyond)
}
