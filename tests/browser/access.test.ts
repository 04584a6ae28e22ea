import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { screens, settled } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Rules of what colours alone decide. The enhanced contrast of 7 : 1 is of level AAA and must be asked for. */
const colours = ['color-contrast', 'link-in-text-block']
const enhanced = [...colours, 'color-contrast-enhanced']

async function findings(page: Page, only?: string[]): Promise<string[]> {
  const axe = new AxeBuilder({ page })
  const { violations } = await (only ? axe.withRules(only) : axe.withTags(rules)).analyze()
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${impact}: ${id}: ${target.join(' ')}: ${failureSummary}`),
  )
}

/** All rules once; what another mode changes is colours, and nothing else. */
const modes = [
  { name: 'light', media: { colorScheme: 'light', contrast: 'no-preference' }, only: undefined },
  { name: 'dark', media: { colorScheme: 'dark', contrast: 'no-preference' }, only: colours },
  { name: 'light, high contrast', media: { colorScheme: 'light', contrast: 'more' }, only: enhanced },
  { name: 'dark, high contrast', media: { colorScheme: 'dark', contrast: 'more' }, only: enhanced },
] as const

/** Screens that between them use every colour; the others are looked at in every mode by the long form. */
const inEveryMode = ['/', '/games/breakwater', '/designs/shearwater', '/parts']

/** What the scan finds in the page that is open: in every mode, or in the first. */
async function findingsIn(page: Page, scanned: readonly (typeof modes)[number][]): Promise<string[]> {
  const found: string[] = []
  for (const { name, media, only } of scanned) {
    await page.emulateMedia(media)
    await page.locator(`html[data-scheme="${media.colorScheme}"]`).waitFor()
    for (const finding of await findings(page, only)) found.push(`${name}: ${finding}`)
  }
  return found
}

describe('the accessibility scan finds nothing in light, dark and high contrast', () => {
  test.each(screens)('on $path', async ({ path, ready }) => {
    const page = await world.open(path)
    await settled(page, ready)
    const scanned = inLongForm || inEveryMode.includes(path) ? modes : modes.slice(0, 1)
    expect(await findingsIn(page, scanned)).toEqual([])
    await page.context().close()
  })

  test('in the panel of settings, the list of shortcuts, and an opened number', async () => {
    const page = await world.open('/')
    await settled(page, '.question .facts li:nth-child(4)')
    const panels = [
      () => page.getByRole('button', { name: 'Settings and help' }).click(),
      () => page.keyboard.press('?'),
      () => page.locator('.answer .opens').click(),
    ]
    for (const open of panels) {
      await open()
      await page.locator('dialog[open]').waitFor()
      expect(await findingsIn(page, modes)).toEqual([])
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
    await page.context().close()
  })
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
  await expect.poll(() => figures.count()).toBe(2)
  for (const figure of await figures.all()) {
    await figure.getByText('Numbers as a table').click()
    await expect.poll(() => figure.locator('tbody tr').count()).toBeGreaterThan(3)
  }
  await page.context().close()
})
