import { addTimes, inverse, product } from './galois.ts'
import { weightsOf } from './weights.ts'

interface Equation {
  weights: Uint8Array
  data: Uint8Array
}

const scale = (bytes: Uint8Array, factor: number): void => {
  for (let index = 0; index < bytes.length; index++) bytes[index] = product(bytes[index]!, factor)
}

/** Gaussian elimination over bytes, one equation at a time: each frame says what a sum of the message's parts is. */
export class Solver {
  private readonly equations: (Equation | undefined)[]
  private readonly needed: number
  have = 0

  constructor(needed: number) {
    this.needed = needed
    this.equations = Array.from({ length: needed })
  }

  /** Which parts have come by themselves. */
  get parts(): boolean[] {
    return this.equations.map((equation, index) => {
      if (!equation) return false
      return equation.weights.every((weight, place) => weight === 0 || place === index)
    })
  }

  /** Whether the frame says what did not follow from the earlier ones. */
  add(frame: { id: number; index: number; data: Uint8Array }): boolean {
    const weights = weightsOf(frame, this.needed)
    const data = frame.data.slice()
    for (let at = 0; at < this.needed; at++) {
      const weight = weights[at]!
      if (weight === 0) continue
      const known = this.equations[at]
      if (known) {
        addTimes(weights, known.weights, weight)
        addTimes(data, known.data, weight)
        continue
      }
      const one = inverse(weight)
      scale(weights, one)
      scale(data, one)
      this.equations[at] = { weights, data }
      this.have++
      return true
    }
    return false
  }

  /** The parts, one behind the other; all equations are there. */
  solve(): Uint8Array {
    const equations = this.equations as Equation[]
    for (let at = this.needed - 1; at > 0; at--)
      for (const above of equations.slice(0, at)) addTimes(above.data, equations[at]!.data, above.weights[at]!)
    const width = equations[0]!.data.length
    const message = new Uint8Array(width * this.needed)
    for (const [index, { data }] of equations.entries()) message.set(data, index * width)
    return message
  }
}
