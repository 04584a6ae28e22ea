import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { findings } from './axe.ts'
import { drawMap, path, section, slow, turnsKnown, unfold } from './tradeoffScreen.ts'
import { openWorld, type World } from './world.ts'

/** What stands folded on it, besides the map. */
const folded = [
  'Worth of one more piece, against time left',
  'Own numbers',
  'One match against another',
  'Leave by, from each place',
]

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

test.each(['light', 'dark'] as const)(
  'with the map drawn, a phone of 360 px in the %s theme shows everything without scrolling sideways, and the scan finds nothing',
  async (colorScheme) => {
    const page = await world.open(path, { viewport: { width: 360, height: 740 }, colorScheme })
    await drawMap(page)
    await turnsKnown(page)
    for (const title of folded) await unfold(page, title)
    await section(page, 'Worth of one more piece, against time left').getByText('Numbers as a table').waitFor(slow)
    const wide = await page.evaluate(() => {
      const boxes = [...document.querySelectorAll('main .side-by-side, main .scroll, main svg, main figure')]
      return {
        page: document.documentElement.scrollWidth - document.documentElement.clientWidth,
        options: boxes
          .filter((box) => box.classList.contains('side-by-side'))
          .map((box) => box.scrollWidth - box.clientWidth),
      }
    })
    expect(wide.page).toBeLessThanOrEqual(0)
    expect(wide.options.length).toBe(2)
    expect(Math.max(...wide.options)).toBeLessThanOrEqual(0)
    await expect.poll(() => page.getByRole('list', { name: 'Options side by side' }).count()).toBe(1)
    expect(await findings(page)).toEqual([])
    await page.context().close()
  },
  300_000,
)

/** How long each picture took so far from its data to the frame that paints it (see useDrawn). */
const drawn = (page: Page) =>
  page.evaluate(() =>
    performance
      .getEntriesByType('measure')
      .filter(({ name }) => name.startsWith('drawn:'))
      .map(({ name, duration }) => ({ name: name.slice('drawn:'.length), duration })),
  )

test('every picture says how long it took from its data to the screen; npm run bench -- web says how long that is', async () => {
  const page = await world.open(path)
  await drawMap(page)
  for (const title of folded) await unfold(page, title)
  await section(page, 'Worth of one more piece, against time left').getByText('Numbers as a table').waitFor(slow)
  await section(page, 'What would turn it').getByText('The dashed line is where').waitFor(slow)
  await section(page, 'The call').getByText('Numbers as a table').first().waitFor(slow)
  const measured = await drawn(page)
  const names = [...new Set(measured.map(({ name }) => name))].sort()
  expect(names).toEqual(['break-even', 'chances', 'difference', 'dots', 'knowing', 'leave-by', 'map', 'piece', 'swing'])
  expect(measured.filter(({ duration }) => !(duration > 0))).toEqual([])
  await page.context().close()
}, 300_000)

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
