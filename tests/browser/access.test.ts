import { AxeBuilder } from '@axe-core/playwright'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const screens = [
  { path: '/', shows: 'Open question' },
  { path: '/games', shows: 'Breakwater' },
  { path: '/games/breakwater', shows: 'The places' },
  { path: '/designs', shows: 'Sketch a robot' },
  { path: '/designs/shearwater', shows: 'What to do next' },
  { path: '/trade-offs', shows: 'Compare ways to play' },
  { path: '/trade-offs/hook-or-practice', shows: 'What you believe, and what to measure next' },
  { path: '/decisions', shows: 'Leave the hook out' },
  { path: '/decisions/leave-the-hook-out', shows: 'What would change it' },
]

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  test.each(screens)('$path has no finding of the accessibility scan', async ({ path, shows }) => {
    const page = await world.open(path, { colorScheme })
    await page.getByText(shows).first().waitFor()
    if (path === '/designs/shearwater') await page.getByRole('group', { name: 'Cycle strip' }).waitFor()
    const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze()
    const found = violations.map(
      ({ id, impact, nodes }) => `${impact}: ${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
    )
    expect(found).toEqual([])
    await page.context().close()
  })
})

test.each(screens)('$path fits a screen of 360 px', async ({ path, shows }) => {
  const page = await world.open(path, { viewport: { width: 360, height: 740 } })
  await page.getByText(shows).first().waitFor()
  if (path === '/designs/shearwater') await page.getByRole('group', { name: 'Cycle strip' }).waitFor()
  const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
  expect(wider).toBeLessThanOrEqual(0)
  await page.context().close()
})

test('a bar is reached, read and changed by keyboard alone, and its form opens', async () => {
  const page = await world.open('/designs/shearwater')
  const strip = page.getByRole('group', { name: 'Cycle strip' })
  await strip.waitFor()
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')
  await page.keyboard.press('Tab')
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the content')
  await page.keyboard.press('Enter')
  for (let press = 0; press < 40 && !(await focused()).endsWith(', seconds'); press++) await page.keyboard.press('Tab')
  expect(await focused()).toMatch(/, seconds$/)
  const value = () => page.evaluate(() => Number(document.activeElement?.getAttribute('aria-valuenow')))
  const before = await value()
  await page.keyboard.press('PageUp')
  await page.waitForFunction((was) => Number(document.activeElement?.getAttribute('aria-valuenow')) > was + 0.3, before)
  await page.getByTestId('stage-form').waitFor()
  await page.context().close()
})

test('every picture of the design screen has its numbers as a table', async () => {
  const page = await world.open('/designs/shearwater')
  await page.getByRole('group', { name: 'Cycle strip' }).waitFor()
  await page.getByText('What to do next').waitFor()
  const figures = page.locator('figure.chart')
  expect(await figures.count()).toBe(2)
  for (const figure of await figures.all()) {
    await figure.getByText('Numbers as a table').click()
    expect(await figure.locator('tbody tr').count()).toBeGreaterThan(3)
  }
  await page.context().close()
})
