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

/** What a camera sees of a screen with a code: brightness of each dot, averaged over 4 rays, uneven light, a grainy sensor. */
export function picture(code: { text: string; still: boolean } | null, sight: Sight): Uint8Array {
  const { width, height, fills = 0.85, turned = 0, noise = 0 } = sight
  const modules = code && codeModules(code.text, code.still)
  const size = (modules?.length ?? 0) + 2 * quiet
  const scale = size / (height * fills)
  const [cos, sin] = [Math.cos((turned * Math.PI) / 180), Math.sin((turned * Math.PI) / 180)]
  const brightness = (x: number, y: number): number => {
    const [dx, dy] = [(x - width / 2) * scale, (y - height / 2) * scale]
    const column = Math.floor(cos * dx + sin * dy + size / 2)
    const row = Math.floor(-sin * dx + cos * dy + size / 2)
    if (!modules || column < 0 || row < 0 || column >= size || row >= size) return 90
    return modules[row - quiet]?.[column - quiet] ? 25 : 215
  }
  const grain = new Uniforms(7)
  return Uint8Array.from({ length: width * height }, (_, index) => {
    const [x, y] = [index % width, Math.floor(index / width)]
    const rays = brightness(x + 0.25, y + 0.25) + brightness(x + 0.75, y + 0.25) + brightness(x + 0.25, y + 0.75)
    const light = 0.75 + (0.25 * x) / width
    const seen = ((rays + brightness(x + 0.75, y + 0.75)) / 4) * light + (noise ? (2 * grain.next() - 1) * noise : 0)
    return Math.max(0, Math.min(255, seen))
  })
}

/** The same as the picture that a page reads. */
export function asPixels(grey: Uint8Array): Uint8ClampedArray {
  const pixels = new Uint8ClampedArray(4 * grey.length)
  for (const [index, value] of grey.entries()) pixels.fill(value, 4 * index, 4 * index + 3)
  for (let index = 3; index < pixels.length; index += 4) pixels[index] = 255
  return pixels
}
