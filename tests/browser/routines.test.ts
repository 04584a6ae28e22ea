import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Robot } from '../../src/model/documents/types.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const robotOf = async (id: string): Promise<Robot> =>
  (await fetch(`${world.url}/api/documents/design/${id}`).then((response) => response.json())).body.robot

const open = async (path: string, title: string, options = {}): Promise<Page> => {
  const page = await world.open(path, options)
  await page.getByText(title).click()
  return page
}

test('a routine is made by form: its points follow, open to their parts, and it is saved whole', async () => {
  const page = await world.open('/designs/kittiwake')
  const { length } = (await robotOf('kittiwake')).autos
  await page.getByRole('button', { name: 'Add a routine' }).click()
  const panel = page.getByRole('region', { name: 'Autonomous routines' })
  await panel.getByLabel('Name', { exact: true }).fill('Out and in')
  await panel.getByLabel('It moves off its start').fill('90')
  await panel.getByLabel('It ends at', { exact: true }).selectOption({ label: 'Lightship' })
  await panel.getByRole('button', { name: 'Add a step' }).click()
  await panel.getByLabel('Goal', { exact: true }).selectOption({ label: 'Piers' })
  await panel.getByLabel('At', { exact: true }).fill('99')
  await panel.getByText('At most 60, not 99.').waitFor()
  await panel.getByLabel('At', { exact: true }).fill('20')
  await panel.getByText('at must lie within the autonomous').waitFor()
  await panel.getByLabel('At', { exact: true }).fill('5')
  await panel.getByRole('button', { name: 'Add a step' }).click()
  await panel.getByText('With this step it has scored 2 × Buoy, but preload and what it takes are only 1.').waitFor()
  await panel.getByRole('button', { name: 'It takes pieces from a source' }).click()
  await expect.poll(() => panel.getByText('With this step it has scored').count()).toBe(0)
  await panel.getByLabel('only if every piece of the step before scored').check()

  await panel.getByRole('button', { name: /expected points/ }).click()
  const opened = page.getByRole('dialog', { name: 'How this came about' })
  const cells = (await opened.locator('table').first().locator('td').allInnerTexts()).map(Number)
  const total = cells.pop()!
  expect(cells.length).toBe(3)
  // Each part is rounded.
  expect(Math.abs(cells.reduce((sum, cell) => sum + cell, 0) - total)).toBeLessThan(0.2)
  await page.keyboard.press('Escape')

  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  const made = (await robotOf('kittiwake')).autos[length]!
  expect(made).toMatchObject({ name: 'Out and in', leaves: 0.9, takes: [{ count: 1 }] })
  expect(made.steps).toMatchObject([
    { at: 5, goal: 'piers', needsPrevious: false },
    { at: 9, goal: 'piers', needsPrevious: true },
  ])
  await page.context().close()
})

test.runIf(inLongForm)(
  'a path is drawn by presses on the field, dragged, stepped by keys and typed, and what does not fit is said',
  async () => {
    const page = await open('/designs/shearwater', 'Routine: Two on the gantry')
    const field = page.getByRole('group', { name: 'Path on the field: Two on the gantry' })
    await field.scrollIntoViewIfNeeded()
    const box = (await field.boundingBox())!
    const metre = (box.width - 2) / 16.6
    await page.mouse.click(box.x + 1 + 4 * metre, box.y + 1 + (8.2 - 6) * metre)
    const point = (number: number) => page.getByRole('slider', { name: `Point ${number}`, exact: true })
    // The first point is the start; the pressed one comes after it.
    await point(2).waitFor()
    const first = await point(1).getAttribute('aria-valuetext')
    expect(first).toContain('at 0.0\u00a0s')
    await expect.poll(() => point(2).getAttribute('aria-valuetext')).toMatch(/^(3\.9|4)\d*.m along/)
    await page.getByText('The path does not end where the routine ends').waitFor()

    const from = (await point(2).boundingBox())!
    await page.mouse.move(from.x + 12, from.y + 12)
    await page.mouse.down()
    await page.mouse.move(from.x + 12 + metre, from.y + 12, { steps: 5 })
    await page.mouse.up()
    const along = Number((await point(2).getAttribute('aria-valuetext'))!.match(/^[\d.]+/)![0])
    expect(Math.abs(along - 5)).toBeLessThan(0.3)
    await point(2).focus()
    await page.keyboard.press('ArrowLeft')
    expect(Number((await point(2).getAttribute('aria-valuetext'))!.match(/^[\d.]+/)![0])).toBeCloseTo(along - 0.05, 2)

    await page.getByRole('button', { name: 'Add a point' }).click()
    await point(3).waitFor()
    await expect.poll(() => page.getByText('The path does not end where the routine ends').count()).toBe(0)
    await page.getByLabel('Point 3, time').fill('0.5')
    await page.getByText('Times rise along the path').waitFor()
    await page.getByLabel('Point 3, time').fill('9')
    await expect.poll(() => page.getByText('Times rise along the path').count()).toBe(0)
    await page.getByLabel('Point 2, along').fill('40 in')
    await expect.poll(() => point(2).getAttribute('aria-valuetext')).toMatch(/^1\.016.m along/)
    await page.getByRole('button', { name: 'Remove the path' }).click()
    await page.getByText('No path is drawn yet.').waitFor()
    await page.keyboard.press('Control+z')
    await point(3).waitFor()
    await point(3).focus()
    await page.keyboard.press('Delete')
    await page.waitForFunction(() => !document.querySelector('[data-handle="path/2"]'))
    await page.context().close()
  },
)

test.runIf(inLongForm)('a point is moved by a finger on a phone', async () => {
  const page = await open('/designs/puffin', 'Routine:', { viewport: { width: 390, height: 844 }, hasTouch: true })
  await page.getByRole('button', { name: 'Add a point' }).click()
  const point = page.getByRole('slider', { name: 'Point 2', exact: true })
  await page.getByText('The one call').waitFor()
  await page.getByRole('group', { name: /^Path on the field:/ }).scrollIntoViewIfNeeded()
  await page.mouse.wheel(0, 150)
  await page.waitForTimeout(300)
  const box = (await point.boundingBox())!
  const was = await point.getAttribute('aria-valuetext')
  const touch = await page.context().newCDPSession(page)
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    touch.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  const before = await page.evaluate(() => window.scrollY)
  const [x, y] = [box.x + 12, box.y + 12]
  await send('touchStart', [{ x, y }])
  for (let step = 1; step <= 6; step++) await send('touchMove', [{ x: x + step * 5, y: y - step * 4 }])
  expect(await page.evaluate(() => window.scrollY)).toBe(before)
  await send('touchEnd', [])
  await expect.poll(() => point.getAttribute('aria-valuetext')).not.toBe(was)
  await page.context().close()
})

test.runIf(inLongForm)(
  'a routine that ways to play begin with is removed with a word, and undo brings it back',
  async () => {
    const page = await open('/designs/shearwater', 'Routine: Two on the gantry')
    await page.getByRole('button', { name: 'Remove ‘Two on the gantry’' }).click()
    await page.getByText(/‘Two on the gantry’ is removed\. .*begins with it/).waitFor()
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    await page.getByText('Routine: Two on the gantry').waitFor()
    await page.context().close()
  },
)

test.runIf(inLongForm).each(['light', 'dark'] as const)(
  'an open routine has no finding of the scan in the %s theme',
  async (colorScheme) => {
    const page = await open('/designs/shearwater', 'Routine: Two on the gantry', { colorScheme })
    await page.getByRole('button', { name: 'Add a point' }).click()
    expect(await findings(page)).toEqual([])
    await page.context().close()
  },
)

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
