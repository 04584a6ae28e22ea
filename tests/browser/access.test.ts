import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { colours, enhanced, findings, findingsIn, modes } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { faintInPictures } from './pictureContrast.ts'
import { settled } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

describe('the accessibility scan finds nothing in light, dark and high contrast', () => {
  test.runIf(inLongForm)('in the panel of settings, the list of shortcuts, and an opened number', async () => {
    const page = await world.open('/')
    await settled(page, '.question .facts li:nth-child(4)')
    const panels = [
      () => page.getByRole('button', { name: 'Settings and help' }).click(),
      () => page.keyboard.press('?'),
      () => page.locator('.answer .opens').click(),
    ]
    for (const [index, open] of panels.entries()) {
      await open()
      await page.locator('dialog[open]').waitFor()
      // What lies under the panel is scanned in every mode without it; the first has every kind of field.
      const scanned = inLongForm || index === 0 ? modes : modes.slice(0, 1)
      expect(await findingsIn(page, scanned, 'dialog[open]')).toEqual([])
      await page.keyboard.press('Escape')
      await page.locator('dialog[open]').waitFor({ state: 'detached' })
    }
    await page.context().close()
  })
})

describe('the scan itself', () => {
  test('sees a text of too little contrast, in high contrast also one of less than 7 : 1', async () => {
    const page = await world.open('/help')
    await settled(page, '.glossary dt')
    await page.evaluate(() => document.documentElement.style.setProperty('--ink', '#6a6a6a'))
    expect(await findings(page, colours)).toEqual([])
    expect((await findings(page, enhanced)).join()).toContain('color-contrast-enhanced')
    await page.evaluate(() => document.documentElement.style.setProperty('--ink', '#aaaaaa'))
    expect((await findings(page)).join()).toContain('color-contrast')
    // Of a text over a shape of a picture the scan says nothing, the measure beside it does: #aaa on white is 2.32 : 1.
    await page.evaluate(() => {
      const picture =
        '<svg width="90" height="30"><rect width="90" height="30" fill="#fff"/><text y="20" fill="#aaa">faint</text></svg>'
      document.querySelector('main')!.insertAdjacentHTML('beforeend', picture)
    })
    expect(await faintInPictures(page, 4.5)).toEqual(['faint: 2.32 : 1'])
    await page.context().close()
  })
})

test('a bar is reached, read and changed by keyboard alone, its form opens, and every picture has its numbers as a table', async () => {
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

  await page.getByText('What to do next').waitFor()
  const figures = page.locator('figure.chart')
  await expect.poll(() => figures.count()).toBe(2)
  for (const figure of await figures.all()) {
    await figure.getByText('Numbers as a table').click()
    await expect.poll(() => figure.locator('tbody tr').count()).toBeGreaterThan(3)
  }
  await page.context().close()
})
