import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { inLongForm } from './longForm.ts'
import { type PdfPage, readPdf, squeezed } from './pdf.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const millimetre = 96 / 25.4
/** Points of a PDF to a millimetre. */
const point = 72 / 25.4
const formats = [
  { format: 'A4', width: 210, height: 297 },
  { format: 'Letter', width: 215.9, height: 279.4 },
] as const

async function opened(): Promise<Page> {
  const page = await world.open('/decisions/leave-the-hook-out')
  await page.getByRole('heading', { name: 'Agreed' }).waitFor()
  return page
}

async function printed(page: Page, format: 'A4' | 'Letter'): Promise<PdfPage[]> {
  const pdf = await page.pdf({ format })
  const folder = join(projectRoot(), 'test-results')
  await mkdir(folder, { recursive: true })
  await writeFile(join(folder, `decision-${format}.pdf`), pdf)
  return readPdf(pdf)
}

/** The lines and cells of each block of the record, its heading first. */
const blocksOf = async (page: Page): Promise<string[][]> => {
  await page.emulateMedia({ media: 'print' })
  const texts = await page
    .locator('.decision > .whole, .decision .caution')
    .evaluateAll((elements) =>
      elements.map((element) =>
        [...element.querySelectorAll<HTMLElement>('.visually-hidden')].reduce(
          (text, { innerText }) => text.replace(innerText, ''),
          (element as HTMLElement).innerText,
        ),
      ),
    )
  return texts.map((text) =>
    text
      .split(/[\n\t]/)
      .map(squeezed)
      .filter((line) => line !== ''),
  )
}

/** Blocks that do not stand whole, from the heading to the last line, on one page. */
const cut = (blocks: string[][], pages: PdfPage[]): string[][] =>
  blocks.filter((lines) => !pages.some(({ text }) => lines.every((line) => text.includes(line))))

/** WCAG 2.2, relative luminance and contrast of two colours '#rrggbb'. */
function contrast(one: string, other: string): number {
  const luminance = (colour: string) => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255
      return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
    }) as [number, number, number]
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue
  }
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number]
  return (light + 0.05) / (dark + 0.05)
}

describe.each(formats)('the decision record on $format, read from its PDF', ({ format, width, height }) => {
  let page: Page
  let pages: PdfPage[]
  beforeAll(async () => {
    page = await opened()
    pages = await printed(page, format)
  })
  afterAll(() => page.context().close())

  test('is one or two pages of that size', async () => {
    expect(pages.length).toBeGreaterThanOrEqual(1)
    expect(pages.length).toBeLessThanOrEqual(2)
    for (const sheet of pages) {
      // The browser rounds the paper to its own pixels.
      expect(Math.abs(sheet.width - width * point)).toBeLessThan(1)
      expect(Math.abs(sheet.height - height * point)).toBeLessThan(1.5)
    }
  })

  test('says all that a record is asked for', async () => {
    const text = pages.map((sheet) => sheet.text).join('')
    const { body } = await fetch(`${world.url}/api/documents/decision/leave-the-hook-out`).then((answer) =>
      answer.json(),
    )
    const said: string[] = [
      body.question,
      body.result,
      ...body.assumptions.flatMap((one: { text: string; source: string }) => [one.text, one.source]),
      ...body.wouldChange,
      ...body.measureNext,
      ...body.objections.flatMap((one: { who: string; text: string; answer: string }) => [
        `${one.who}: ${one.text}`,
        one.answer,
      ]),
      ...body.checks.flatMap((one: { quantity: string; expected: string; when: string }) => Object.values(one)),
      // Kept with the record, so that nothing is waited for before it is printed.
      'the working pressure is lost with 55.8',
      `Computed from the trade-off ‘${body.snapshot.tradeOff}’, revision 1`,
      ...body.agreed.map(({ who }: { who: string }) => who),
    ]
    expect(said.length).toBeGreaterThan(25)
    // What stands in two columns may be read in another order; each piece is there all the same.
    expect(
      said.filter(
        (piece) =>
          !squeezed(piece)
            .split(/(?<=[,.;:])/u)
            .every((part) => text.includes(part)),
      ),
    ).toEqual([])
    // The time of an agreement, and room to write down what is seen.
    expect(text).toMatch(/strategylead,16jan2027,\d\d:20/)
    expect(text).toContain('whentolookseen')
  })

  test('has nothing beyond the margins of 16 and 15 mm', async () => {
    for (const sheet of pages) {
      // A margin is rounded down to a whole pixel, three quarters of a point.
      const [across, down] = [16 * point - 0.75, 15 * point - 0.75]
      // White leaves no ink; the ground of what goes on over the page is cut off there.
      const inked = sheet.shapes.filter(({ colour }) => colour !== '#ffffff')
      const boxes = [...sheet.words, ...inked].map(({ box }) => box)
      expect(boxes.length).toBeGreaterThan(20)
      for (const [left, bottom, right, top] of boxes) {
        expect(left).toBeGreaterThanOrEqual(across)
        expect(bottom).toBeGreaterThanOrEqual(down)
        expect(right).toBeLessThanOrEqual(sheet.width - across)
        expect(top).toBeLessThanOrEqual(sheet.height - down)
      }
    }
  })

  test('is legible in black and white: grey inks of contrast 4.5 on what lies under them, and no letter under 9 pt', async () => {
    for (const sheet of pages) {
      expect(sheet.inks.length).toBeGreaterThan(100)
      const under = ([x, y]: [number, number]) =>
        sheet.shapes.findLast(
          // Lines and frames are no ground to write on; what is as large as a word is.
          ({ box, colour }) =>
            colour !== '#000000' && box[0] <= x && x <= box[2] && box[1] <= y && y <= box[3] && box[3] - box[1] > 8,
        )?.colour ?? '#ffffff'
      const pairs = new Set(sheet.inks.map(({ colour, at }) => `${colour} ${under(at)}`))
      for (const pair of pairs) {
        const [ink, ground] = pair.split(' ') as [string, string]
        expect(ink.slice(1, 3) === ink.slice(3, 5) && ink.slice(3, 5) === ink.slice(5, 7), pair).toBe(true)
        expect(contrast(ink, ground), pair).toBeGreaterThanOrEqual(4.5)
      }
      expect(Math.min(...sheet.words.map(({ size }) => size))).toBeGreaterThanOrEqual(9)
    }
  })

  test('keeps its blocks whole: each fits a page and may not be broken', async () => {
    const [across, down] = [Math.floor((width - 32) * millimetre), Math.floor((height - 30) * millimetre)]
    await page.setViewportSize({ width: across, height: down })
    await page.emulateMedia({ media: 'print' })
    const blocks = await page.locator('.decision .whole, .decision .caution, .decision table').evaluateAll((elements) =>
      elements.map((element) => ({
        height: element.getBoundingClientRect().height,
        inside: getComputedStyle(element).breakInside,
      })),
    )
    expect(blocks.length).toBeGreaterThan(7)
    for (const block of blocks) {
      expect(block.inside).toBe('avoid')
      expect(block.height).toBeLessThan(down)
    }
  })

  // Changes the page, so that it is the last.
  test('has every block on one page, from its heading to its last line', async () => {
    const blocks = await blocksOf(page)
    expect(blocks.length).toBeGreaterThan(9)
    expect(cut(blocks, pages)).toEqual([])
    if (format !== 'A4') return
    // The same look at a record whose blocks may be broken, and are pushed over the page’s end, finds the cut.
    await page.addStyleTag({ content: '.decision * { break-inside: auto !important }' })
    const found: number[] = []
    for (const push of [40, 60, 80, 100]) {
      await page.addStyleTag({ content: `.decision > :first-child { padding-top: ${push}mm }` })
      found.push(cut(blocks, await readPdf(await page.pdf({ format }))).length)
    }
    expect(Math.max(...found)).toBeGreaterThan(0)
  })
})

test('is legible in black and white: nothing but black, white and grey, no text under 9 pt, its cautions and no buttons', async () => {
  const page = await world.open('/decisions/leave-the-hook-out')
  await page.getByRole('heading', { name: 'Agreed' }).waitFor()
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  const found = await page.locator('.decision *').evaluateAll((elements) =>
    elements
      .filter((element) => getComputedStyle(element).display !== 'none')
      .map((element) => {
        const { color, backgroundColor, fontSize } = getComputedStyle(element)
        return {
          text: element.textContent?.slice(0, 30),
          color,
          backgroundColor,
          points: Number.parseFloat(fontSize) * 0.75,
        }
      }),
  )
  const channels = (color: string) => color.match(/[\d.]+/g)!.map(Number)
  for (const { text, color, backgroundColor, points } of found) {
    const [red, green, blue] = channels(color)
    expect([red, blue], text).toEqual([green, green])
    expect(red!, text).toBeLessThanOrEqual(0x33)
    const [r, g, b, alpha = 1] = channels(backgroundColor)
    if (alpha > 0) expect([r, b], text).toEqual([g, g])
    expect(points, text).toBeGreaterThanOrEqual(9)
  }
  for (const title of ['Lifted robots', 'Spinning wheels', 'Stored air'])
    await expect.poll(() => page.getByRole('heading', { name: title }).isVisible()).toBe(true)
  await expect.poll(() => page.getByRole('button').count()).toBe(0)
  await page.context().close()
})

test.runIf(inLongForm).each(formats)(
  'a game on $format: its name and the whole field stand on the first page',
  async ({ format }) => {
    const page = await world.open('/games/breakwater')
    await page.getByText('The field fits together, and this robot gets everywhere.').waitFor()
    const [first] = await printed(page, format)
    for (const text of ['Breakwater', 'The field', 'Checks', 'Own wall to the left'])
      expect(first!.text).toContain(squeezed(text))
    expect(first!.text).not.toContain(squeezed('Add to the field'))
    await page.context().close()
  },
)
