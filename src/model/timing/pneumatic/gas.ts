import { heatRatio, reference } from './flow.ts'

/** Specific gas constant of dry air (J/(kg·K)). Source: ISO 2533:1975 gives 287.05287. */
export const gasConstant = 287.05

/**
 * Mass through an ideal choked nozzle (kg/s): p·A/√T · √(γ/R) · (2/(γ + 1))^((γ + 1)/(2(γ − 1))).
 *
 * Source: White, Fluid Mechanics, section 9.4. Here for checks: real valves are described by ISO 6358.
 */
export function chokedNozzle({ area, pressure, temperature }: { area: number; pressure: number; temperature: number }) {
  return nozzleConstant() * ((area * pressure) / Math.sqrt(temperature))
}

/** mass flow · √temperature / (area · pressure) of an ideal choked nozzle, in SI. */
export const nozzleConstant = (): number =>
  Math.sqrt(heatRatio / gasConstant) * (2 / (heatRatio + 1)) ** ((heatRatio + 1) / (2 * (heatRatio - 1)))

/** Pressure ratio at and below which an ideal nozzle is choked. */
export const nozzleCriticalRatio = (): number => (2 / (heatRatio + 1)) ** (heatRatio / (heatRatio - 1))

/** Seconds in which a tank empties from one pressure to another through a choked path, at the reference temperature. */
export function chokedBlowDown({
  volume,
  conductance,
  from,
  to,
}: {
  volume: number
  conductance: number
  from: number
  to: number
}) {
  return (volume / (conductance * reference.pressure)) * Math.log(from / to)
}

/**
 * What is left in a tank that is emptied without heat from outside: its temperature, its share of the mass, and the pressure
 * when it has warmed up again.
 *
 * Source: Çengel & Boles, Thermodynamics, chapter 7: T ∝ p^((γ−1)/γ), mass ∝ p^(1/γ).
 */
export function adiabaticDischarge({ from, to, temperature }: { from: number; to: number; temperature: number }) {
  const mass = (to / from) ** (1 / heatRatio)
  return { temperature: temperature * (to / from) ** ((heatRatio - 1) / heatRatio), mass, rewarmed: from * mass }
}

/** Area of a piston on the side away from the rod, and on the rod's side (m²). */
export function areasOf({ bore, rod }: { bore: number; rod: number }): { full: number; ring: number } {
  return { full: (Math.PI * bore ** 2) / 4, ring: (Math.PI * (bore ** 2 - rod ** 2)) / 4 }
}

/** Air that fills a swept volume from nothing to a pressure, as free air at the room's pressure, isothermal (Boyle). */
export const freeAirOf = (swept: number, { pressure, ambient }: { pressure: number; ambient: number }): number =>
  (swept * pressure) / ambient
