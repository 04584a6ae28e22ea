import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { game } from '../../seed/game.ts'
import { readPdf } from './pdf.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

// A comparison with its break-even and swings takes its time on a busy machine.
vi.setConfig({ testTimeout: 400_000 })

const path = '/trade-offs/hook-or-practice'
const own = (page: Page) => page.getByRole('region', { name: 'Own numbers' })
const note = (page: Page) => page.getByRole('region', { name: 'Overridden numbers' })
const computed = (page: Page) =>
  page.getByText('Computed in your browser from the documents').waitFor({ timeout: 170_000 })

/** Own numbers stand folded while there are none. */
async function openOwn(page: Page) {
  const head = own(page).getByRole('heading').getByRole('button')
  if ((await head.getAttribute('aria-expanded')) === 'false') await head.click()
}

/** Expected points of the first option, as its row has them. */
const pointsOf = async (page: Page) =>
  Number(
    await page
      .getByRole('row', { name: /Shearwater/ })
      .first()
      .locator('td')
      .first()
      .locator('button')
      .evaluate((button) => button.firstChild!.textContent),
  )

async function override(page: Page, what: string, fields: { [label: string]: string }) {
  await openOwn(page)
  await own(page).getByLabel('Which number').selectOption({ label: what })
  for (const [label, value] of Object.entries(fields)) await own(page).getByLabel(label).fill(value)
  await own(page).getByRole('button', { name: 'Set it' }).click()
}

test('a leg’s own time goes into the answer and closes the unknowns about it; taking it back brings the answer back', async () => {
  const page = await world.open(path)
  await computed(page)
  const points = () => pointsOf(page)
  const before = await points()
  await override(page, 'Shearwater, whole time: finish at Davit', {
    'Own time, likely (s)': '34',
    'Low (s), if it varies': '31',
    'High (s), if it varies': '40',
    'Why you know better': 'The winch is slow',
    'Who says so': 'Tilly',
  })
  await note(page).getByText('31.0\u00a0s – 34.0\u00a0s – 40.0\u00a0s').waitFor()
  await own(page)
    .getByText(/^These unknowns are about times that are overridden/)
    .waitFor()
  await page.waitForFunction(() => !document.body.textContent!.includes('Shown is the last result'))
  await computed(page)
  expect(await points()).toBeLessThan(before - 0.3)
  await own(page).getByRole('button', { name: 'Take back: Shearwater, whole time: finish at Davit' }).click()
  await own(page).getByText('Taken back: Shearwater, whole time: finish at Davit.').waitFor()
  await page.waitForFunction(() => !document.body.textContent!.includes('Shown is the last result'))
  await computed(page)
  expect(await points()).toBe(before)
  await own(page).getByRole('button', { name: 'Undo' }).click()
  await note(page).getByText('The winch is slow').waitFor()
  await page.context().close()
})

test('own pieces on a goal bring what more pieces are worth there', async () => {
  const page = await world.open(path)
  await computed(page)
  const before = await pointsOf(page)
  const what = 'Pieces a match of ‘Shearwater, finish when it pays’: Gantry'
  await override(page, what, {
    'Own pieces a match': '20',
    'Why you know better': 'Counted in practice',
    'Who says so': 'Tilly',
  })
  await note(page).getByText('20.0 pieces').waitFor()
  const was = Number((await note(page).locator('s').textContent())!.replace(' pieces', ''))
  await page.waitForFunction(() => !document.body.textContent!.includes('Shown is the last result'))
  await computed(page)
  const each = (game.goals.find(({ name }) => name === 'Gantry')!.award as { teleop: number }).teleop
  // Shown are tenths, of pieces as of points.
  expect(Math.abs((await pointsOf(page)) - before - (20 - was) * each)).toBeLessThan(0.1 + 0.05 * each + 1e-9)
  await page.context().close()
})

// Saves, so that it is the last.
test('own points turn the answer, are marked beside it and on the record and its print, and stay when it is computed again', async () => {
  const page = await world.open(path)
  await computed(page)
  await expect.poll(() => page.locator('.answer').textContent()).toMatch(/^Kittiwake/)
  await expect.poll(() => note(page).count()).toBe(0)

  await openOwn(page)
  await own(page).getByLabel('Own expected points').fill('66')
  await own(page).getByRole('button', { name: 'Set it' }).click()
  await own(page).getByText('Please say why; without a reason nobody can check it.').waitFor()
  await override(page, 'Expected points of ‘Shearwater, finish when it pays’', {
    'Own expected points': '66',
    'Why you know better': 'Last year’s hook did as much',
    'Who says so': 'Tilly',
  })
  await note(page).getByText('Contains one overridden number.').waitFor()
  const struck = await note(page).locator('s').textContent()
  expect(struck).toMatch(/^5\d\.\d points$/)
  await note(page).getByText('66.0 points').waitFor()
  await note(page)
    .getByText(/Last year’s hook did as much \(Tilly, /)
    .waitFor()
  await page.locator('.answer', { hasText: /^Shearwater/ }).waitFor({ timeout: 170_000 })
  await computed(page)
  // In the options' own table too.
  const options = page.getByRole('table', { name: 'Options side by side' })
  const strike = options.getByRole('row', { name: /Shearwater/ }).locator('s')
  await expect.poll(() => strike.textContent()).toBe(struck!.replace(' points', ''))
  await expect.poll(() => options.locator('s').count()).toBe(1)

  // Whoever opens a number reads it there too.
  await page.locator('.answer').getByRole('button').click()
  const panel = page.getByRole('dialog', { name: 'How this came about' })
  await panel.getByText('Contains one overridden number. Expected points of').waitFor()
  await page.keyboard.press('Escape')

  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  await page.getByLabel('Decision', { exact: true }).fill('We build the hook')
  await page.getByRole('button', { name: 'Make a decision record' }).click()
  await page.getByRole('heading', { name: 'We build the hook', level: 1 }).waitFor()
  await note(page).getByText('66.0 points').waitFor()
  const row = page.getByRole('row', { name: /Shearwater/ }).first()
  await expect.poll(() => row.locator('s').textContent()).toBe(struck!.replace(' points', ''))
  const pages = await readPdf(await page.pdf({ format: 'A4' }))
  const printed = pages.map(({ text }) => text).join('')
  expect(printed).toContain('containsoneoverriddennumber.')
  expect(printed).toContain('lastyear’shookdidasmuch(tilly')

  // Computed again, what is overridden stays.
  await page.getByRole('button', { name: 'Compute again' }).click()
  await page.getByText('The points of ‘Shearwater, finish when it pays’ are overridden').waitFor()
  await page.getByText('‘Shearwater, finish when it pays’ stays at 66.0 points.').waitFor()

  // The start page shows the newest decision's answer, and says what it rests on.
  await page.goto(world.url)
  await note(page).getByText('66.0 points').waitFor()
  await page.context().close()
})

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
