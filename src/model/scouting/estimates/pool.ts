import { hashOf } from '../../match/habits.ts'
import { Uniforms } from '../../random/uniforms.ts'

/** Rows of numbers: 512 kB, so that they stay in a processor's own memory. */
const size = 1 << 14
const mask = size - 1

let numbers: Float64Array | null = null

/** A normal number, a uniform one, its logarithm, and nothing, in turn. Made once, always the same. Normals by Box & Muller (1958). */
function pool(): Float64Array {
  if (numbers) return numbers
  const [uniform, radial, angular] = [draw(1), draw(2), draw(3)]
  numbers = new Float64Array(4 * size)
  for (let k = 0; k < size; k += 2) {
    const radius = Math.sqrt(-2 * Math.log(radial()))
    const angle = 2 * Math.PI * angular()
    numbers[4 * k] = radius * Math.cos(angle)
    numbers[4 * k + 1] = uniform()
    numbers[4 * k + 2] = Math.log(numbers[4 * k + 1] as number)
    numbers[4 * k + 4] = radius * Math.sin(angle)
    numbers[4 * k + 5] = uniform()
    numbers[4 * k + 6] = Math.log(numbers[4 * k + 5] as number)
  }
  return numbers
}

function draw(stream: number) {
  const uniforms = new Uniforms(20_261_127, [stream])
  return () => uniforms.next()
}

/**
 * Random numbers of one name: draw d of a name is always the same, so that estimates move with what is seen and not by
 * chance. Names walk through one set of numbers from different places with different steps.
 */
export class Named {
  private readonly numbers: Float64Array
  private readonly from: number
  private readonly step: number

  constructor(name: string) {
    this.numbers = pool()
    const hash = hashOf(name)
    this.from = hash & mask
    this.step = (hash >>> 13) | 1
  }

  /** Place of the row that a draw meets at its so-many-th try. */
  private at(draw: number, turn: number): number {
    return 4 * ((this.from + Math.imul(this.step, draw + 1024 * turn)) & mask)
  }

  uniform(draw: number): number {
    return this.numbers[this.at(draw, 0) + 1] as number
  }

  normal(draw: number): number {
    return this.numbers[this.at(draw, 0)] as number
  }

  /**
   * Of scale 1. Source: Marsaglia & Tsang, ACM Transactions on Mathematical Software 26 (2000), 363–372.
   */
  gamma(draw: number, shape: number): number {
    if (shape <= 0) return 0
    const boosted = shape < 1
    const d = (boosted ? shape + 1 : shape) - 1 / 3
    const spread = Math.sqrt(9 * d)
    for (let turn = 0; ; turn++) {
      const k = this.at(draw, turn)
      const x = this.numbers[k] as number
      const u = this.numbers[k + 1] as number
      const root = 1 + x / spread
      if (root <= 0) continue
      const v = root * root * root
      const square = x * x
      if (
        u > 1 - 0.0331 * square * square &&
        (this.numbers[k + 2] as number) > 0.5 * square + d - d * v + d * Math.log(v)
      )
        continue
      return boosted ? d * v * Math.exp((this.numbers[(k ^ 0x5554) + 2] as number) / shape) : d * v
    }
  }

  /**
   * Draw d for each d at shape `shapes[d] + more`: the same numbers as `gamma` gives, whose first try nearly always does, in
   * one loop, because an event asks for half a million.
   */
  gammas(shapes: Float64Array, more: number, into = new Float64Array(shapes.length)): Float64Array {
    const { numbers, from, step } = this
    for (let draw = 0; draw < shapes.length; draw++) {
      const shape = (shapes[draw] as number) + more
      const k = 4 * ((from + Math.imul(step, draw)) & mask)
      const d = shape - 1 / 3
      const x = numbers[k] as number
      const root = 1 + x / Math.sqrt(9 * d)
      const square = x * x
      const accepted = shape >= 1 && root > 0 && (numbers[k + 1] as number) <= 1 - 0.0331 * square * square
      into[draw] = accepted ? d * (root * root * root) : this.gamma(draw, shape)
    }
    return into
  }
}

/** A count with this mean and dispersion (variance over mean), for a uniform number u and a Gamma draw of its own name. */
export function countOf(
  mean: number,
  dispersion: number,
  { mixing, u, draw }: { mixing: Named; u: number; draw: number },
): number {
  if (!(mean > 0)) return 0
  if (dispersion < 0.98) {
    // Binomial: as many tries as give the mean, rounded so that the mean is kept.
    const chance = 1 - dispersion
    const tries = mean / chance
    const whole = Math.floor(tries) + Number(mixing.uniform(draw) < tries - Math.floor(tries))
    return binomialOf(whole, chance, u)
  }
  const excess = dispersion - 1
  const own = excess > 0.02 ? excess * mixing.gamma(draw, mean / excess) : mean
  return poissonOf(own, u)
}

function poissonOf(mean: number, u: number): number {
  let chance = Math.exp(-mean)
  if (chance === 0) return Math.max(0, Math.round(mean))
  let below = chance
  let k = 0
  while (u > below && k < 10_000) {
    k++
    chance *= mean / k
    below += chance
  }
  return k
}

/** The number of hits that a uniform number stands for. */
export function binomialOf(tries: number, chance: number, u: number): number {
  if (chance >= 1) return tries
  let probability = (1 - chance) ** tries
  let below = probability
  let k = 0
  while (u > below && k < tries) {
    probability *= ((tries - k) / (k + 1)) * (chance / (1 - chance))
    k++
    below += probability
  }
  return k
}
