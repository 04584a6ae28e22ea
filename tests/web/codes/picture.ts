import { Uniforms } from '../../../src/model/random/index.ts'
import { codeModules, quiet } from '../../../web/codes/modules.ts'

export interface Sight {
  width: number
  height: number
  /** Share of the height that the code takes with its quiet zone. */
  fills?: number
  /** Degrees. */
  turned?: number
  /** Noise of the sensor, in steps of 255, either way. */
  noise?: number
}

const rays = [
  [0.25, 0.25],
  [0.75, 0.25],
  [0.25, 0.75],
  [0.75, 0.75],
] as const

/** What a picture of a code of some size has in common with the next: which module each ray meets (−1: none), and the grain. */
interface Ground {
  met: Int32Array
  grain: Float32Array
}

const grounds = new Map<string, Ground>()

function groundOf(size: number, sight: Sight): Ground {
  const key = JSON.stringify([size, sight])
  const known = grounds.get(key)
  if (known) return known
  const { width, height, fills = 0.85, turned = 0, noise = 0 } = sight
  const scale = size / (height * fills)
  const [cos, sin] = [Math.cos((turned * Math.PI) / 180), Math.sin((turned * Math.PI) / 180)]
  const met = new Int32Array(4 * width * height).fill(-1)
  for (let index = 0; index < met.length; index++) {
    const [dot, ray] = [index >> 2, rays[index & 3]!]
    const dx = ((dot % width) + ray[0] - width / 2) * scale
    const dy = (Math.floor(dot / width) + ray[1] - height / 2) * scale
    const column = Math.floor(cos * dx + sin * dy + size / 2)
    const row = Math.floor(-sin * dx + cos * dy + size / 2)
    if (column >= 0 && row >= 0 && column < size && row < size) met[index] = row * size + column
  }
  const uniform = new Uniforms(7)
  const grain = Float32Array.from({ length: width * height }, () => (2 * uniform.next() - 1) * noise)
  const ground = { met, grain }
  grounds.set(key, ground)
  return ground
}

/** What a camera sees of a screen with a code: brightness of each dot, averaged over 4 rays, uneven light, a grainy sensor. */
export function picture(code: { text: string; still: boolean } | null, sight: Sight): Uint8Array {
  const modules = code ? codeModules(code.text, code.still) : []
  const size = modules.length + 2 * quiet
  const { met, grain } = groundOf(size, sight)
  const bright = new Uint8Array(size * size).fill(code ? 215 : 90)
  for (const [row, line] of modules.entries())
    for (const [column, dark] of line.entries()) if (dark) bright[(row + quiet) * size + column + quiet] = 25
  const grey = new Uint8Array(grain.length)
  for (let dot = 0; dot < grey.length; dot++) {
    let sum = 0
    for (let ray = 4 * dot; ray < 4 * dot + 4; ray++) sum += met[ray]! < 0 ? 90 : bright[met[ray]!]!
    const light = 0.75 + (0.25 * (dot % sight.width)) / sight.width
    grey[dot] = Math.max(0, Math.min(255, (sum / 4) * light + grain[dot]!))
  }
  return grey
}

/** The same as the picture that a page reads. */
export function asPixels(grey: Uint8Array): Uint8ClampedArray {
  const pixels = new Uint8ClampedArray(4 * grey.length)
  for (const [index, value] of grey.entries()) pixels.fill(value, 4 * index, 4 * index + 3)
  for (let index = 3; index < pixels.length; index += 4) pixels[index] = 255
  return pixels
}
