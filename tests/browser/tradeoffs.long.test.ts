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

test('an unknown gets another name where it stands, everywhere at once, with nothing computed of it lost; undo brings the old one back', async () => {
  const page = await world.open(path)
  const unknowns = section(page, 'The unknowns')
  const turning = section(page, 'What would turn it')
  await turning.getByText('‘Hang success’').first().waitFor(slow)
  const group = (name: string) => unknowns.getByRole('group', { name })
  const name = group('Hang success').getByLabel('What you call it')
  const likely = await group('Hang success').getByLabel('Likely').inputValue()
  // A name that another has is answered beside the field, and nothing is renamed.
  await name.fill('Latch time')
  await group('Hang success').getByText('There is an unknown ‘Latch time’ already.').waitFor()
  await name.press('Enter')
  await group('Hang success').waitFor()
  // By the keyboard alone; the field keeps the focus.
  await name.fill('hook holds')
  await name.press('Enter')
  const renamed = group('Hook holds')
  await renamed.waitFor()
  const focused = () => page.evaluate(() => (document.activeElement as HTMLInputElement | null)?.value)
  expect(await focused()).toBe('Hook holds')
  expect(await renamed.getByLabel('Likely').inputValue()).toBe(likely)
  await turning.getByText('‘Hook holds’').first().waitFor(slow)
  // What was computed of all that is believed, which takes its seconds, is there under the new name.
  const belief = section(page, 'What you believe, and what to measure next')
  await belief.getByText('Hook holds').first().waitFor()
  expect(await belief.getByText('Hang success').count()).toBe(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  await group('Hang success').waitFor()
  await belief.getByText('Hang success').first().waitFor()
  await page.context().close()
}, 300_000)

test('how a leave-by came about leads to the own numbers, and opens them', async () => {
  const page = await world.open(path)
  await unfold(page, 'Leave by, from each place')
  await section(page, 'The call')
    .getByRole('button', { name: /^How this came about/ })
    .first()
    .click(slow)
  const panel = page.getByRole('dialog', { name: 'How this came about' })
  await panel.getByText('To have other times').waitFor()
  expect(await panel.getByRole('link', { name: 'To the designs' }).getAttribute('href')).toBe('/designs')
  await panel.getByRole('link', { name: 'To the own numbers' }).press('Enter')
  await panel.waitFor({ state: 'detached' })
  const own = section(page, 'Own numbers')
  await own.getByLabel('Which number').waitFor()
  await expect.poll(async () => ((await own.boundingBox())?.y ?? 1e9) < 400).toBe(true)
  await page.context().close()
}, 300_000)
