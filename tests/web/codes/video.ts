import { closeSync, openSync, writeSync } from 'node:fs'
import { picture, type Sight } from './picture.ts'

/** One picture of a film, and how many frames of the film it stands. */
export interface Shot {
  code: { text: string; still: boolean } | null
  frames: number
}

/**
 * Writes a film in black and white that a browser takes for its camera's (YUV4MPEG2). A browser plays it at its rate, over and
 * over.
 */
export function writeFilm(file: string, shots: readonly Shot[], sight: Sight & { rate: number }): void {
  const { width, height, rate } = sight
  const out = openSync(file, 'w')
  writeSync(out, `YUV4MPEG2 W${width} H${height} F${rate}:1 Ip A1:1 C420jpeg\n`)
  const colours = new Uint8Array(((width / 2) * height) / 2 + ((width / 2) * height) / 2).fill(128)
  for (const { code, frames } of shots) {
    const grey = picture(code, sight)
    for (let frame = 0; frame < frames; frame++) {
      writeSync(out, 'FRAME\n')
      writeSync(out, grey)
      writeSync(out, colours)
    }
  }
  closeSync(out)
}
