/** A box of the world (m): y points upwards. */
export interface Bounds {
  left: number
  right: number
  bottom: number
  top: number
}

/** How the world is put into a picture: pixels per metre, the same both ways, and where a point of it lies. */
export interface View {
  perMetre: number
  height: number
  x(metres: number): number
  y(metres: number): number
}

export interface Room {
  /** Of the whole picture (px). */
  width: number
  /** That the world may take at most (px); margins come on top. */
  highest: number
  margin: { left: number; right: number; top: number; bottom: number }
}

/** Less than this (m) nobody builds: a world of no size still has a scale. */
const least = 1e-6

/** The largest scale at which the box fits into the room; it stands in the middle of the width. */
export function fitted({ left, right, bottom, top }: Bounds, { width, highest, margin }: Room): View {
  const [wide, high] = [Math.max(right - left, least), Math.max(top - bottom, least)]
  const room = Math.max(40, width - margin.left - margin.right)
  const perMetre = Math.min(room / wide, highest / high)
  const start = margin.left + (room - wide * perMetre) / 2
  return {
    perMetre,
    height: high * perMetre + margin.top + margin.bottom,
    x: (metres) => start + (metres - left) * perMetre,
    y: (metres) => margin.top + (top - metres) * perMetre,
  }
}

/** The box around points. */
export function around(points: readonly (readonly [number, number])[]): Bounds {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) }
}

/** The greatest of 1, 2 or 5 times a power of ten that is no more than a number above 0. */
export function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value))
  const factor = [5, 2].find((each) => each * power <= value * (1 + 1e-9)) ?? 1
  return Number((factor * power).toPrecision(12))
}

/** Pixels per metre in round steps, so that a wheel that grows is seen to grow: its diameter takes 56 to 140 px. */
export const steppedScale = (diameter: number): number => roundBelow(140 / diameter)
