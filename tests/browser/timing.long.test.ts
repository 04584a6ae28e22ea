import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { findings } from './axe.ts'
import { wider } from './screens.ts'
import { bar, openWorld, shownPoints, type World } from './world.ts'

/** A busy machine takes its time. */
const soon = { timeout: 30_000 }

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const seconds = (page: Page, name: string) => bar(page, name).getAttribute('aria-valuenow').then(Number)
const reduction = (page: Page) => page.getByLabel('Reduction', { exact: true })

test('an arm’s hardware gives a stage its time: bar and points follow the reduction, an own time stands beside it, undo takes it back', async () => {
  const page = await world.open('/designs/kittiwake', { viewport: { width: 390, height: 844 } })
  await shownPoints(page)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  await bar(page, 'Raise the arm').click()
  const was = await seconds(page, 'Raise the arm')
  const section = page.getByTestId('hardware')
  await section.getByLabel('What moves').selectOption({ label: 'Arm turned by motors' })
  await section.getByRole('button', { name: 'Work it out from hardware' }).click()
  const timing = page.getByTestId('timing')
  await timing.getByText('at the likely numbers').waitFor()
  await section.getByText('The time follows ‘Raise the arm’').waitFor()
  await expect.poll(() => seconds(page, 'Raise the arm'), soon).toBeLessThan(was)
  expect(await bar(page, 'Raise the arm').getAttribute('aria-valuetext')).toContain('time from hardware')

  // Far slower than the drive that it overlaps, so that the points must fall.
  const points = await shownPoints(page)
  await reduction(page).fill('4000')
  await expect.poll(() => seconds(page, 'Raise the arm'), soon).toBeGreaterThan(6)
  await expect.poll(() => shownPoints(page), soon).toBeLessThan(points - 0.5)
  await reduction(page).fill('0.1')
  await timing.getByText('It can not do it: It does not start').waitFor()
  await section.getByText('so the stage keeps its last time').waitFor()
  await reduction(page).fill('200')
  await section.getByText('The time follows ‘Raise the arm’').waitFor()
  expect(await wider(page)).toBe(0)
  expect(await findings(page, undefined, '[data-testid=timing]')).toEqual([])

  // Paper has what is folded on the screen, and the parts' own numbers.
  const voltage = page.getByLabel('Battery voltage', { exact: true })
  await expect.poll(() => voltage.isVisible()).toBe(false)
  await page.emulateMedia({ media: 'print' })
  await expect.poll(() => voltage.isVisible()).toBe(true)
  await timing.getByText(/^Nominal voltage .+ · Free speed .+rpm · /).waitFor()
  await page.emulateMedia({ media: 'screen' })

  const form = page.getByTestId('stage-form')
  // For a moment the likely time lies above the high one, which is said and breaks nothing.
  await form.getByLabel('Likely', { exact: true }).fill('1.5')
  await form.getByLabel('High', { exact: true }).fill('2')
  await section.getByTestId('hardware-difference').waitFor()
  await section.getByRole('button', { name: 'Use the hardware’s time' }).click()
  await section.getByText('The time follows ‘Raise the arm’').waitFor()

  const undo = page.getByRole('button', { name: 'Undo', exact: true })
  for (let press = 0; press < 12 && (await undo.isEnabled()); press++) await undo.click()
  await section.getByLabel('What moves').waitFor()
  expect(await seconds(page, 'Raise the arm')).toBe(was)
  expect(await timing.count()).toBe(0)
  await page.context().close()
})

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
