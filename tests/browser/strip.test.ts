import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { bar, openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const seconds = (page: Page, name: string) => bar(page, name).getAttribute('aria-valuenow').then(Number)
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true })

/** The middle of a bar's end on the screen, and the pixels of a second. */
async function endOf(page: Page, name: string): Promise<{ x: number; y: number; second: number }> {
  await bar(page, name).scrollIntoViewIfNeeded()
  const end = (await bar(page, name).locator('[data-end]').boundingBox())!
  const body = (await bar(page, name).locator('rect[rx]').boundingBox())!
  return { x: end.x + end.width / 2, y: end.y + end.height / 2, second: body.width / (await seconds(page, name)) }
}

async function score(path: string, options = {}): Promise<Page> {
  const page = await world.open(path, options)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  await bar(page, 'Raise the arm').waitFor()
  return page
}

/** Waits until every edit is taken back. */
async function asSaved(page: Page): Promise<void> {
  await page.getByText('Revision 1, saved.').waitFor()
  await expect.poll(() => undo(page).isDisabled()).toBe(true)
}

describe('on one page, each beginning with the design as it is saved', () => {
  let page: Page
  beforeAll(async () => {
    page = await score('/designs/shearwater')
  })
  afterAll(() => page.context().close())

  test('a bar’s end is dragged by mouse: the drawing and the points follow, the drop is one step of undo', async () => {
    const before = await shownPoints(page)
    const was = await seconds(page, 'Raise the arm')
    const { x, y, second } = await endOf(page, 'Raise the arm')
    await page.mouse.move(x, y)
    await page.mouse.down()
    // Far enough that the points fall by twice what is asked for: three seconds are mostly spent waiting for the drive.
    await page.mouse.move(x + 4 * second, y, { steps: 12 })
    await expect.poll(async () => Math.abs((await seconds(page, 'Raise the arm')) - was - 4)).toBeLessThan(0.3)
    // Nothing is edited before the drop, and the points are those of what is drawn.
    await expect.poll(() => undo(page).isDisabled()).toBe(true)
    await page.waitForFunction(
      (points) => Number(document.querySelector('[data-testid=points]')?.textContent) < points - 0.5,
      before,
    )
    await page.mouse.up()
    await page.getByText('Unsaved edits on revision 1').waitFor()
    expect(Math.abs((await seconds(page, 'Raise the arm')) - was - 4)).toBeLessThan(0.3)
    await undo(page).click()
    await asSaved(page)
    await expect.poll(() => seconds(page, 'Raise the arm')).toBe(was)
    await page.keyboard.press('Control+Shift+Z')
    await page.getByText('Unsaved edits on revision 1').waitFor()
    await expect.poll(() => seconds(page, 'Raise the arm')).toBeGreaterThan(was + 3)
    await undo(page).click()
    await asSaved(page)
  })

  test('by keys alone: time by steps that are one step of undo, changing places, removing, and what was removed comes back', async () => {
    const was = await seconds(page, 'Raise the arm')
    await bar(page, 'Raise the arm').focus()
    for (let press = 0; press < 3; press++) await page.keyboard.press('ArrowRight')
    await page.keyboard.press('PageUp')
    expect(Math.abs((await seconds(page, 'Raise the arm')) - was - 0.8)).toBeLessThan(0.051)
    await page.keyboard.press('Control+z')
    await expect.poll(() => seconds(page, 'Raise the arm')).toBe(was)
    await expect.poll(() => undo(page).isDisabled()).toBe(true)

    await bar(page, 'Hook the buoy on').focus()
    await page.keyboard.press('Control+ArrowRight')
    await page.getByText('‘Hook the buoy on’ and ‘Let go’ have changed places.').waitFor()
    await page.getByRole('button', { name: 'Earlier: before ‘Let go’' }).waitFor()
    await page.keyboard.press('Control+ArrowRight')
    await page.getByText('No other stage waits for it').first().waitFor()
    await page.keyboard.press('Delete')
    await page.getByText('‘Hook the buoy on’ is removed').waitFor()
    await page.waitForFunction(() => !document.querySelector('[data-stage="hook-on"]'))
    await page.keyboard.press('Control+z')
    await bar(page, 'Hook the buoy on').waitFor()
    while (await undo(page).isEnabled()) await page.keyboard.press('Control+z')
    await asSaved(page)
  })

  test('a stage is made to wait for another; what would make a circle is refused beside it, and stays as it was', async () => {
    await bar(page, 'Raise the arm').click()
    const form = page.getByTestId('stage-form')
    await form.getByRole('checkbox', { name: 'Let go', exact: true }).click()
    await form
      .getByText(
        '‘Raise the arm’ can not wait for ‘Let go’, because ‘Let go’ waits for it already: ‘Let go’ after ‘Hook the buoy on’ after ‘Raise the arm’.',
      )
      .waitFor()
    await expect.poll(() => form.getByRole('checkbox', { name: 'Let go', exact: true }).isChecked()).toBe(false)
    await page.getByText('Revision 1, saved.').waitFor()
    await form.getByRole('checkbox', { name: 'Drive', exact: true }).click()
    await page.getByText('Unsaved edits on revision 1').waitFor()
    await expect.poll(() => form.getByText('can not wait for').count()).toBe(0)
    await form.getByRole('button', { name: 'Later: after ‘Hook the buoy on’' }).click()
    await form.getByRole('button', { name: 'Earlier: before ‘Hook the buoy on’' }).waitFor()
    await page.getByRole('button', { name: 'Add a stage' }).click()
    await form.getByLabel('Stage', { exact: true }).fill('Back off')
    await bar(page, 'Back off').waitFor()
    await form.getByRole('button', { name: 'Insert a stage after it' }).press('Enter')
    await form.getByLabel('Stage', { exact: true }).fill('Look round')
    await bar(page, 'Look round').waitFor()
    await expect.poll(() => form.getByRole('checkbox', { name: 'Back off', exact: true }).isChecked()).toBe(true)
  })
})

test.runIf(inLongForm)('Escape takes a drag back, and nothing has changed', async () => {
  const page = await score('/designs/kittiwake')
  const was = await seconds(page, 'Raise the arm')
  const { x, y, second } = await endOf(page, 'Raise the arm')
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 2 * second, y, { steps: 6 })
  await expect.poll(() => seconds(page, 'Raise the arm')).toBeGreaterThan(was + 1)
  await page.keyboard.press('Escape')
  await expect.poll(() => seconds(page, 'Raise the arm')).toBe(was)
  await page.mouse.move(x + 3 * second, y)
  await page.mouse.up()
  await expect.poll(() => seconds(page, 'Raise the arm')).toBe(was)
  await page.getByText('Revision 1, saved.').waitFor()
  await page.context().close()
})

test.runIf(inLongForm)('a bar’s end is dragged by a finger on a phone, and the page stays where it is', async () => {
  const page = await score('/designs/puffin', { viewport: { width: 390, height: 844 }, hasTouch: true })
  // What is computed last writes lines above the strip.
  await page.getByText('The one call').waitFor()
  const was = await seconds(page, 'Raise the arm')
  const { x, y, second } = await endOf(page, 'Raise the arm')
  const touch = await page.context().newCDPSession(page)
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    touch.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  const before = await page.evaluate(() => window.scrollY)
  await send('touchStart', [{ x, y }])
  for (let step = 1; step <= 8; step++) await send('touchMove', [{ x: x + step * 0.25 * second, y: y + step * 8 }])
  // The drop itself writes a line above, by which the browser moves what is under the finger.
  expect(await page.evaluate(() => window.scrollY)).toBe(before)
  await send('touchEnd', [])
  await page.getByText('Unsaved edits on revision 1').waitFor()
  expect(Math.abs((await seconds(page, 'Raise the arm')) - was - 2)).toBeLessThan(0.35)
  await page.context().close()
})

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
