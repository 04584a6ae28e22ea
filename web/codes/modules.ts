import qrcode from 'qrcode-generator'

/** Light modules all round, without which readers do not find the code: four, as ISO/IEC 18004 asks for. */
export const quiet = 4

/**
 * The dark modules of a code, row by row. `still`: one that stands there gets error correction M; one of a running sequence
 * L, since a frame that is lost is made up for by the next.
 */
export function codeModules(text: string, still: boolean): boolean[][] {
  const code = qrcode(0, still ? 'M' : 'L')
  code.addData(text, 'Alphanumeric')
  code.make()
  const size = code.getModuleCount()
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (__, column) => code.isDark(row, column)),
  )
}

/** Draws a code dark on white, in whole dots per module, since uneven ones are what cameras stumble over. `width`: in dots of the screen. */
export function drawModules(canvas: HTMLCanvasElement | OffscreenCanvas, modules: boolean[][], width: number): void {
  const size = modules.length + 2 * quiet
  const dots = Math.max(1, Math.floor(width / size))
  canvas.width = canvas.height = dots * size
  const context = canvas.getContext('2d') as CanvasRenderingContext2D
  context.fillStyle = '#fff'
  context.fillRect(0, 0, canvas.width, canvas.height)
  context.fillStyle = '#000'
  for (const [y, row] of modules.entries())
    for (const [x, dark] of row.entries())
      if (dark) context.fillRect((x + quiet) * dots, (y + quiet) * dots, dots, dots)
}
