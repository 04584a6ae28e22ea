export interface Scale {
  (value: number): number
  invert(position: number): number
}

/** A straight-line scale from numbers to positions. A domain of no width maps to the middle. */
export function linearScale(domain: readonly [number, number], range: readonly [number, number]): Scale {
  const [low, high] = domain
  const [start, end] = range
  const width = high - low
  const scale = (value: number): number =>
    width === 0 ? (start + end) / 2 : start + ((value - low) / width) * (end - start)
  const invert = (position: number): number =>
    end === start ? low : low + ((position - start) / (end - start)) * width
  return Object.assign(scale, { invert })
}

/** Round numbers (1, 2 or 5 times a power of ten) inside the domain, about `count` of them. */
export function ticks(domain: readonly [number, number], count: number): number[] {
  const [low, high] = domain
  if (!(high > low) || count < 1) return [low]
  const raw = (high - low) / count
  const power = 10 ** Math.floor(Math.log10(raw))
  const distance = (factor: number) => Math.abs(Math.log((factor * power) / raw))
  const step = power * [1, 2, 5, 10].reduce((best, factor) => (distance(factor) < distance(best) ? factor : best))
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(12)))
}

/** To a hundredth of a pixel, so that pictures are small and snapshots are the same on every machine. */
export const pixel = (value: number): number => Math.round(value * 100) / 100 + 0
