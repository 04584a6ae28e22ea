import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { projectRoot } from '../../src/root.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** The pictures of the README are replaced on request only, so that a test run leaves the tree as it was. */
const renewing = process.env.SCREENSHOTS === '1'
const folder = join(projectRoot(), ...(renewing ? ['docs', 'screenshots'] : ['test-results', 'screenshots']))

const screens: { name: string; path: string; ready(page: Page): Promise<unknown> }[] = [
  {
    name: 'start',
    path: '/',
    ready: async (page) => {
      await page.getByText('Each dot is one of 20').waitFor()
      await page.getByText('Computed anew in your browser just now').waitFor({ timeout: 110_000 })
    },
  },
  {
    name: 'design',
    path: '/designs/shearwater',
    ready: async (page) => {
      await shownPoints(page)
      await page.getByText('8 of 10 matches between').waitFor({ timeout: 110_000 })
      await page.getByRole('slider').nth(1).click()
      await page.getByTestId('stage-form').waitFor()
    },
  },
  {
    name: 'trade-off',
    path: '/trade-offs/hook-or-practice',
    ready: async (page) => {
      await page.getByText('Computed in your browser from the documents').waitFor({ timeout: 110_000 })
      await page.getByText('The dashed line is where').waitFor({ timeout: 110_000 })
      await page.getByText('Each dot is one of 20').waitFor({ timeout: 110_000 })
    },
  },
  {
    name: 'decision',
    path: '/decisions/leave-the-hook-out',
    ready: (page) => page.getByRole('heading', { name: 'Agreed' }).waitFor(),
  },
]

const viewports = [
  { width: 390, height: 844 },
  { width: 1280, height: 900 },
]

// That no loading sign stays is looked at by the scan, too (axe.ts).
describe.runIf(inLongForm || renewing).each(viewports)('at $width px', (viewport) => {
  test.each(screens)('the screen $name is whole', async ({ name, path, ready }) => {
    await mkdir(folder, { recursive: true })
    const page = await world.open(path, { viewport })
    await ready(page)
    // A loading sign that stays means that a part of the screen never comes.
    await expect.poll(() => page.getByText(/^Loading .* …$/).allTextContents(), { timeout: 110_000 }).toEqual([])
    await page.evaluate(() => window.scrollTo(0, 0))
    // Nothing looks pointed at.
    await page.mouse.move(0, 0)
    await page.screenshot({ path: join(folder, `${name}-${viewport.width}.png`), fullPage: !renewing })
    await page.context().close()
  })
})
