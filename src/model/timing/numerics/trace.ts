/** The steps of a motion, from which evenly spaced points can be drawn. */
export class Trace {
  readonly times: number[] = []
  private readonly states: Float64Array[] = []
  private readonly slopes: Float64Array[] = []

  add(time: number, state: Float64Array, slope: Float64Array): void {
    // A step that was refused begins again where it stood.
    if (this.times.at(-1) === time) return
    this.times.push(time)
    this.states.push(state.slice())
    this.slopes.push(slope.slice())
  }

  /** The state at a time, by the cubic through both neighbouring steps with their slopes: for drawings. */
  at(time: number): Float64Array {
    const { times, states, slopes } = this
    let k = times.findIndex((each) => each >= time)
    if (k <= 0) k = k === 0 ? 1 : times.length - 1
    if (times.length < 2) return states[0]!
    const [from, to] = [times[k - 1]!, times[k]!]
    const step = to - from
    const s = Math.min(1, Math.max(0, (time - from) / step))
    const [a, b] = [states[k - 1]!, states[k]!]
    const [c, d] = [slopes[k - 1]!, slopes[k]!]
    return a.map((start, i) => {
      const end = b[i]!
      const bend = (1 - 2 * s) * (end - start) + (s - 1) * step * c[i]! + s * step * d[i]!
      return (1 - s) * start + s * end + s * (s - 1) * bend
    })
  }
}

/** Evenly spaced numbers, both ends included. */
export function evenly(from: number, to: number, points: number): number[] {
  const numbers: number[] = []
  for (let i = 0; i < points; i++) numbers.push(from + ((to - from) * i) / (points - 1))
  return numbers
}

/** Points of a curve that is drawn. */
export const drawnPoints = 61
