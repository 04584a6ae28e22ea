import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** Page objects in a PDF: the tree's own nodes are of type Pages. */
const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0

const millimetre = 96 / 25.4
const formats = [
  { format: 'A4', width: 210, height: 297 },
  { format: 'Letter', width: 215.9, height: 279.4 },
] as const

describe.each(formats)('the decision record on $format', ({ format, width, height }) => {
  test('is one or two pages', async () => {
    const page = await world.open('/decisions/leave-the-hook-out')
    await page.getByRole('heading', { name: 'Agreed' }).waitFor()
    const pdf = await page.pdf({ format })
    const folder = join(projectRoot(), 'test-results')
    await mkdir(folder, { recursive: true })
    await writeFile(join(folder, `decision-${format}.pdf`), pdf)
    expect(pagesOf(pdf)).toBeGreaterThanOrEqual(1)
    expect(pagesOf(pdf)).toBeLessThanOrEqual(2)
    await page.context().close()
  })

  test('keeps its blocks whole: each fits a page and may not be broken', async () => {
    const [across, down] = [Math.floor((width - 32) * millimetre), Math.floor((height - 30) * millimetre)]
    const page = await world.open('/decisions/leave-the-hook-out', { viewport: { width: across, height: down } })
    await page.getByRole('heading', { name: 'Agreed' }).waitFor()
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
    await page.context().close()
  })
})

test('is legible in black and white: nothing but black, white and grey, and no text under 9 pt', async () => {
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
  await page.context().close()
})

test('carries its cautions, and no buttons', async () => {
  const page = await world.open('/decisions/leave-the-hook-out')
  await page.getByRole('heading', { name: 'Agreed' }).waitFor()
  await page.emulateMedia({ media: 'print' })
  for (const title of ['Lifted robots', 'Spinning wheels', 'Stored air'])
    expect(await page.getByRole('heading', { name: title }).isVisible()).toBe(true)
  expect(await page.getByRole('button').count()).toBe(0)
  await page.context().close()
})
