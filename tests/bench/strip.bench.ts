import type { Page } from '@playwright/test'
import { bar, openWorld, shownPoints, type World } from '../browser/world.ts'
import type { BenchEntry } from './entry.ts'

/** Runs in the page, and is a text because the benchmark's compiler would name its functions by a helper of its own. */
const countFrames = `
  globalThis.frames = []
  requestAnimationFrame(function note(time) {
    globalThis.frames.push(time)
    requestAnimationFrame(note)
  })`

/** Times of the page's own frames while a bar's end is dragged to and fro for about two seconds (ms). */
async function framesOfDrag(page: Page): Promise<number[]> {
  const box = (await bar(page, 'Raise the arm').locator('[data-end]').boundingBox())!
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 5, y)
  await page.evaluate(countFrames)
  for (let step = 0; step < 120; step++) await page.mouse.move(x + 60 * Math.sin((step / 120) * 4 * Math.PI), y)
  const frames = await page.evaluate(() => (globalThis as unknown as { frames: number[] }).frames)
  await page.mouse.up()
  return frames
}

/** Frames a second over a real drag of a bar's end of the demo, with the points following. */
async function drag({ open }: World): Promise<number> {
  const page = await open('/designs/shearwater')
  await shownPoints(page)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  await bar(page, 'Raise the arm').waitFor()
  const frames = await framesOfDrag(page)
  await page.context().close()
  if (frames.length < 10) throw new Error(`the drag had ${frames.length} frames, which is too few to measure`)
  return ((frames.length - 1) * 1000) / (frames.at(-1)! - frames[0]!)
}

const entries: BenchEntry[] = [
  {
    name: 'strip.drag',
    unit: 'frames/s',
    better: 'higher',
    open: async () => {
      const world = await openWorld()
      return { run: () => drag(world), close: () => world.close() }
    },
  },
]

export default entries
