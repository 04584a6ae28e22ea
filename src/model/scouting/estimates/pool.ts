import { hashOf } from '../../match/habits.ts'
import { Uniforms } from '../../random/uniforms.ts'

const size = 1 << 16
const mask = size - 1

let numbers: { normals: Float64Array; uniforms: Float64Array } | null = null

/** Made once, always the same. Normals by Box & Muller (1958). */
function pool() {
  if (numbers) return numbers
  const uniforms = Float64Array.from({ length: size }, draw(1))
  const normals = new Float64Array(size)
  const other = draw(2)
  for (let k = 0; k < size; k += 2) {
    const radius = Math.sqrt(-2 * Math.log(other()))
    const angle = 2 * Math.PI * other()
    normals[k] = radius * Math.cos(angle)
    normals[k + 1] = radius * Math.sin(angle)
  }
  numbers = { normals, uniforms }
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
  private readonly normals: Float64Array
  private readonly uniforms: Float64Array
  private readonly from: number
  private readonly step: number

  constructor(name: string) {
    const { normals, uniforms } = pool()
    this.normals = normals
    this.uniforms = uniforms
    this.from = hashOf(name) & mask
    this.step = hashOf(`${name} step`) | 1
  }

  private at(draw: number, turn: number): number {
    return (this.from + Math.imul(this.step, draw + 1024 * turn)) & mask
  }

  uniform(draw: number): number {
    return this.uniforms[this.at(draw, 0)] as number
  }

  normal(draw: number): number {
    return this.normals[this.at(draw, 0)] as number
  }

  /**
   * Of scale 1. Source: Marsaglia & Tsang, ACM Transactions on Mathematical Software 26 (2000), 363–372.
   */
  gamma(draw: number, shape: number): number {
    if (shape <= 0) return 0
    const boosted = shape < 1
    const d = (boosted ? shape + 1 : shape) - 1 / 3
    const c = 1 / Math.sqrt(9 * d)
    for (let turn = 0; ; turn++) {
      const k = this.at(draw, turn)
      const x = this.normals[k] as number
      const u = this.uniforms[k] as number
      const root = 1 + c * x
      if (root <= 0) continue
      const v = root * root * root
      const square = x * x
      if (u > 1 - 0.0331 * square * square && Math.log(u) > 0.5 * square + d - d * v + d * Math.log(v)) continue
      return boosted ? d * v * (this.uniforms[k ^ 0x5555] as number) ** (1 / shape) : d * v
    }
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
