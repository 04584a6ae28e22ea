import { getDocumentProxy, getResolvedPDFJS } from 'unpdf'

/** Left, bottom, right, top, in points from the page's lower left corner. */
export type Box = [number, number, number, number]

export interface PdfPage {
  width: number
  height: number
  /** What stands on it, in the order of the document, without white space and bullets. */
  text: string
  words: { text: string; box: Box; size: number }[]
  /** Filled and drawn shapes, with their colour as '#rrggbb'. */
  shapes: { box: Box; colour: string }[]
  /** Colour and place of each piece of text. */
  inks: { colour: string; at: [number, number] }[]
}

/** Text as it is compared: small letters, no white space, no bullets. */
export const squeezed = (text: string): string => text.toLowerCase().replace(/[\s•\u00ad\u200b]/gu, '')

// Node 20 has no transferToFixedLength, which the reader of PDF uses for its own buffers; a copy does the same.
if (!('transferToFixedLength' in ArrayBuffer.prototype))
  Object.defineProperty(ArrayBuffer.prototype, 'transferToFixedLength', {
    value(this: ArrayBuffer, length = this.byteLength) {
      const copy = new Uint8Array(length)
      copy.set(new Uint8Array(this, 0, Math.min(length, this.byteLength)))
      return copy.buffer
    },
  })

/** Reads a PDF: its pages with their text, shapes and colours. */
export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
  const document = await getDocumentProxy(new Uint8Array(bytes), { verbosity: 0 })
  return Promise.all(Array.from({ length: document.numPages }, (_, index) => readPage(document, index + 1)))
}

type Document = Awaited<ReturnType<typeof getDocumentProxy>>

async function readPage(document: Document, number: number): Promise<PdfPage> {
  const page = await document.getPage(number)
  const [, , width, height] = page.view as Box
  const { items } = await page.getTextContent()
  const words = items.flatMap((item) => {
    if (!('str' in item) || item.str.trim() === '') return []
    const [, , , size, x, y] = item.transform as [number, number, number, number, number, number]
    // Letters stand on the line; a quarter of their size reaches below it at the most.
    return [{ text: item.str, size, box: [x, y - size / 4, x + item.width, y + (3 / 4) * size] as Box }]
  })
  const drawn = await drawingOf(page)
  return { width, height, words, text: squeezed(words.map(({ text }) => text).join('')), ...drawn }
}

type Matrix = [number, number, number, number, number, number]

const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
]

const moved = ([a, b, c, d, e, f]: Matrix, x: number, y: number): [number, number] => [
  a * x + c * y + e,
  b * x + d * y + f,
]

/** Runs through the page's drawing orders, as far as places and colours go. */
async function drawingOf(page: Awaited<ReturnType<Document['getPage']>>): Promise<Pick<PdfPage, 'shapes' | 'inks'>> {
  const { OPS } = await getResolvedPDFJS()
  const { fnArray, argsArray } = await page.getOperatorList()
  const shapes: PdfPage['shapes'] = []
  const inks: PdfPage['inks'] = []
  let state = { matrix: [1, 0, 0, 1, 0, 0] as Matrix, fill: '#000000', stroke: '#000000' }
  let text: Matrix = [1, 0, 0, 1, 0, 0]
  const saved: (typeof state)[] = []
  for (const [index, order] of fnArray.entries()) {
    const given = argsArray[index]
    if (order === OPS.save) saved.push({ ...state })
    else if (order === OPS.restore) state = saved.pop() ?? state
    else if (order === OPS.transform) state.matrix = times(state.matrix, Array.from(given as number[]) as Matrix)
    else if (order === OPS.setFillRGBColor) state.fill = String(given[0])
    else if (order === OPS.setStrokeRGBColor) state.stroke = String(given[0])
    else if (order === OPS.beginText) text = [1, 0, 0, 1, 0, 0]
    else if (order === OPS.setTextMatrix) text = Array.from((given[0].length ? given[0] : given) as number[]) as Matrix
    else if (order === OPS.showText) inks.push({ colour: state.fill, at: moved(times(state.matrix, text), 0, 0) })
    else if (order === OPS.constructPath) {
      const [painting, , extent] = given as [number, unknown, ArrayLike<number> | null]
      if (!extent || painting === OPS.endPath) continue
      const [x0, y0] = moved(state.matrix, extent[0]!, extent[1]!)
      const [x1, y1] = moved(state.matrix, extent[2]!, extent[3]!)
      const box: Box = [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)]
      shapes.push({ box, colour: painting === OPS.stroke ? state.stroke : state.fill })
    }
  }
  return { shapes, inks }
}
