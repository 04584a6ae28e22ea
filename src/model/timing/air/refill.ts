import type { Compressor } from '../parts.ts'
import { reference } from '../pneumatic/flow.ts'

/** Flow of a compressor against a pressure (m³/s of free air): straight between its points, none above the last. */
export function flowAt({ flow }: Pick<Compressor, 'flow'>, pressure: number): number {
  const next = flow.findIndex(([at]) => at >= pressure)
  if (next < 0) return 0
  const [to, more] = flow[next]!
  if (next === 0) return more
  const [from, less] = flow[next - 1]!
  return less + ((more - less) * (pressure - from)) / (to - from)
}

/** A tank with what flows in and leaks out. */
export interface Supply {
  volume: number
  compressor: { part: Compressor; on: number; off: number } | null
  /** Free air at the room's pressure (m³/s), and that pressure (Pa). */
  leak: number
  ambient: number
}

export interface Level {
  pressure: number
  running: boolean
}

/**
 * Pressure after some seconds without a stroke: dp/dt = (p₀·flow(p) − pₐ·leak)/V, isothermal. Between two points of the
 * compressor's flow that is linear in p, so that each piece is solved in closed form. `ran` are the seconds that it ran.
 */
export function refill(supply: Supply, from: Level, seconds: number): Level & { ran: number } {
  const { compressor, volume, leak, ambient } = supply
  const lost = (ambient * leak) / volume
  let { pressure, running } = from
  let left = seconds
  let ran = 0
  for (let turn = 0; turn < 10_000 && left > 1e-12; turn++) {
    running = runs(compressor, { pressure, running })
    const piece = pieceAt(running ? compressor : null, { pressure, volume, lost })
    const spent = Math.min(left, piece.seconds)
    // At a border the number itself, so that rounding can not stand still before it.
    pressure = spent === piece.seconds ? piece.border : piece.after(spent)
    if (running) ran += spent
    left -= spent
    if (pressure <= ambient) return { pressure: ambient, running, ran: ran + (running ? left : 0) }
  }
  return { pressure, running: runs(compressor, { pressure, running }), ran }
}

/** Seconds in which a compressor that runs all the time lifts the pressure to another; null where it never gets there. */
export function fillSeconds({ compressor, volume, leak, ambient }: Supply, from: number, to: number): number | null {
  if (!compressor || to > compressor.off) return null
  const lost = (ambient * leak) / volume
  const borders = [...compressor.part.flow.map(([at]) => at), to].filter((at) => at > from && at <= to)
  let pressure = from
  let seconds = 0
  for (const border of [...new Set(borders)].sort((a, b) => a - b)) {
    const rateAt = (at: number) => (reference.pressure * flowAt(compressor.part, at)) / volume - lost
    // Right above its last point the flow jumps to nothing.
    if (pressure >= compressor.part.flow.at(-1)![0]) return null
    const [here, there] = [rateAt(pressure), rateAt(border)]
    if (here <= 0 || there <= 0) return null
    const same = Math.abs(there - here) < 1e-12 * here
    seconds += (border - pressure) * (same ? 1 / here : Math.log(there / here) / (there - here))
    pressure = border
  }
  return seconds
}

/** It starts at or below `on`, ends at `off`, and keeps to what it does between. */
function runs(compressor: Supply['compressor'], { pressure, running }: Level): boolean {
  if (!compressor || pressure >= compressor.off) return false
  return pressure <= compressor.on || running
}

interface Piece {
  /** Until the next border (s), and the pressure there. */
  seconds: number
  border: number
  after(seconds: number): number
}

function pieceAt(
  compressor: Supply['compressor'],
  { pressure, volume, lost }: { pressure: number; volume: number; lost: number },
): Piece {
  const per = reference.pressure / volume
  const flow = compressor?.part.flow ?? []
  const rateAt = (at: number) => (compressor ? per * flowAt(compressor.part, at) : 0) - lost
  const last = flow.at(-1)?.[0] ?? 0
  const rising = rateAt(pressure) > 0
  // Right above its last point the flow jumps to nothing: there a compressor holds the pressure, and above it only leaks.
  if (compressor && pressure === last && rising) {
    return { seconds: Number.POSITIVE_INFINITY, border: pressure, after: () => pressure }
  }
  const borders = [...flow.map(([at]) => at), ...(compressor ? [compressor.on, compressor.off] : [])]
  const beyond = borders.filter((at) => (rising ? at > pressure : at < pressure))
  const border = rising ? Math.min(...beyond) : Math.max(...beyond)
  const here = rateAt(pressure)
  if (compressor && pressure > last && lost > 0) {
    return { seconds: (pressure - border) / lost, border, after: straight(pressure, -lost) }
  }
  if (!Number.isFinite(border)) return { seconds: Number.POSITIVE_INFINITY, border, after: straight(pressure, here) }
  const slope = (rateAt(border) - here) / (border - pressure)
  if (Math.abs(slope * (border - pressure)) < 1e-12 * Math.abs(here) || here === 0) {
    const seconds = here === 0 ? Number.POSITIVE_INFINITY : (border - pressure) / here
    return { seconds: seconds > 0 ? seconds : Number.POSITIVE_INFINITY, border, after: straight(pressure, here) }
  }
  const share = 1 + (slope * (border - pressure)) / here
  return {
    seconds: share > 0 ? Math.log(share) / slope : Number.POSITIVE_INFINITY,
    border,
    after: (seconds) => pressure + (here * Math.expm1(slope * seconds)) / slope,
  }
}

const straight = (pressure: number, rate: number) => (seconds: number) => pressure + rate * seconds
