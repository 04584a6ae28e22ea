import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { bar, openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** Latencies from key press to new points, as the page's own timeline has them (ms). */
const latencies = (page: Page) =>
  page.evaluate(() => performance.getEntriesByName('edit-to-points').map((entry) => entry.duration))

test('from the start page to the answer, its uncertainty and how it came about; belief shows its progress, and can be stopped', async () => {
  const page = await world.open('/')
  await page.getByText('Computed anew in your browser just now').waitFor()
  const answer = page.locator('.answer')
  await expect.poll(() => answer.textContent()).toMatch(/: \+\d+\.\d.*points a match/s)
  const facts = await page.locator('.question .facts').textContent()
  expect(facts).toMatch(/better choice with a chance of \d+\s%/)
  expect(facts).toMatch(/It turns to .* if ‘Hang success’ is (more|less) than \d+\s%/)
  await answer.getByRole('button').click()
  const panel = page.getByRole('dialog', { name: 'How this came about' })
  const cells = await panel.locator('table').first().locator('td').allInnerTexts()
  const [best, second, lead] = cells.map((cell) => Number(cell.replace('\u2212', '-')))
  // The parts are rounded each, so their difference may be a tenth off.
  expect(Math.abs(best! - second! - lead!)).toBeLessThanOrEqual(0.1001)
  await expect.poll(() => panel.textContent()).toContain('revision 1')
  await page.keyboard.press('Escape')
  await panel.waitFor({ state: 'hidden' })
  await page.getByRole('link', { name: 'See the trade-off' }).click()
  await page.getByRole('heading', { name: 'What would turn it' }).waitFor()
  await page.getByRole('heading', { name: 'What you believe, and what to measure next' }).waitFor()
  await page.getByRole('button', { name: /^Compute/ }).click()
  await page.getByText(/2,000 draws of all unknowns: (under )?[1-9]/).waitFor()
  await page.getByRole('button', { name: 'Stop', exact: true }).click()
  await page.getByText(/^Stopped\./).waitFor()
  await page.context().close()
})

test('each key press on a bar brings new points, with its time in the page’s own record, and undo takes them back', async () => {
  const page = await world.open('/designs/shearwater')
  const before = await shownPoints(page)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  const stage = bar(page, 'Raise the arm')
  await page.getByRole('slider', { name: 'Raise the arm, seconds' }).waitFor()
  await stage.focus()
  const was = Number(await stage.getAttribute('aria-valuenow'))
  for (let press = 0; press < 10; press++) {
    await page.keyboard.press('ArrowRight')
    await page.waitForFunction((count) => performance.getEntriesByName('edit-to-points').length >= count, press + 1)
  }
  await page.waitForFunction(
    (value) => Number(document.querySelector('[role=slider][aria-label^="Raise the arm"]')?.ariaValueNow) >= value,
    was + 0.9,
  )
  expect(await shownPoints(page)).toBeLessThanOrEqual(before)
  // How fast is a matter of the machine: `npm run bench -- web.edit` measures it.
  expect((await latencies(page)).length).toBeGreaterThanOrEqual(10)
  // On a busy machine the presses may lie further apart than what counts as one step.
  const undo = page.getByRole('button', { name: 'Undo', exact: true })
  for (let step = 0; step < 10 && (await undo.isEnabled()); step++) await page.keyboard.press('Control+z')
  await page.waitForFunction(
    (points) => document.querySelector('[data-testid=points]')?.textContent === points,
    before.toFixed(1),
  )
  await page.context().close()
})

test('what is typed wrong is answered beside the field and kept; what is typed right is saved as a revision, compared and restored', async () => {
  const page = await world.open('/designs/puffin')
  const before = await shownPoints(page)
  await page.getByText('The robot: name, size, drive, form, reliability').click()
  const field = page.locator('[data-place="robot/drive/topSpeed"]').last()
  await field.fill('fast')
  await page.getByText('‘fast’ is not a speed; write it like 3.5 m/s or 11 ft/s.').first().waitFor()
  await expect.poll(() => page.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(true)
  // The strip keeps its last good state.
  expect(await shownPoints(page)).toBe(before)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  await expect.poll(() => field.inputValue()).toBe('fast')
  await field.fill('1,5')
  await page.waitForFunction(
    (points) => Number(document.querySelector('[data-testid=points]')?.textContent) < points,
    before,
  )
  await expect.poll(() => page.getByText('is not a speed').count()).toBe(0)

  await page.getByText('against what is saved').waitFor()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  await expect.poll(() => page.getByText('against what is saved').count()).toBe(0)
  await page.getByRole('button', { name: 'Revisions' }).click()
  const panel = page.getByRole('dialog', { name: 'Revisions' })
  await panel.getByRole('button', { name: 'Compare' }).last().click()
  await panel.getByText('robot › drive › topSpeed').waitFor()
  await panel.getByRole('button', { name: 'Restore' }).click()
  await page.getByText('Restored as revision 3').waitFor()
  await page.waitForFunction(
    (points) => document.querySelector('[data-testid=points]')?.textContent === points,
    before.toFixed(1),
  )
  await page.context().close()
})

test.runIf(inLongForm)(
  'a trade-off’s older revision opens to be read, is compared, and leads back to the newest',
  async () => {
    const page = await world.open('/trade-offs/hook-or-practice')
    const question = page.getByRole('textbox', { name: 'Question' })
    const before = await question.inputValue()
    await question.fill('Shall we hang?')
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await page.getByText('Saved as revision 2.').waitFor()
    await page.getByRole('button', { name: 'Revisions' }).click()
    const panel = page.getByRole('dialog', { name: 'Revisions' })
    await panel.getByRole('link', { name: 'Open' }).last().click()
    await page.getByText('You look at revision 1').waitFor()
    await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe(before)
    await page.getByText('Computed in your browser from the documents').waitFor()
    await expect.poll(() => question.getAttribute('readonly')).not.toBeNull()
    await expect.poll(() => page.getByRole('button', { name: /^(Save|Remove|Add it|Make a decision)/ }).count()).toBe(0)
    await page.getByRole('button', { name: 'To the newest' }).click()
    await page.getByRole('heading', { name: 'Shall we hang?', level: 1 }).waitFor()
    await page.getByRole('button', { name: 'Revisions' }).click()
    await panel.getByRole('button', { name: 'Compare' }).last().click()
    await panel
      .getByRole('row', { name: /question/ })
      .getByText('Shall we hang?')
      .waitFor()
    await page.context().close()
  },
)

test.runIf(inLongForm)(
  'the call, the break-even and each figure of the answer open to how they came about',
  async () => {
    const page = await world.open('/trade-offs/hook-or-practice')
    const panel = page.getByRole('dialog', { name: 'How this came about' })
    const opened = async (section: string | RegExp, title: RegExp) => {
      const button = page.getByRole('region', { name: section }).getByRole('button', { name: /how this came about$/i })
      await button.first().click()
      await panel.getByRole('heading', { name: title }).waitFor()
      await expect.poll(() => panel.getByRole('row').count()).toBeGreaterThan(1)
      await page.keyboard.press('Escape')
      await panel.waitFor({ state: 'hidden' })
    }
    await opened('Answer', /The lead/)
    await opened('What would turn it', /^Where ‘.*’ turns the answer/)
    await opened('Which arguments matter', /How far each unknown moves the lead|What does not matter/)
    await opened('The call', /^The call: /)
    await opened('What you believe, and what to measure next', /Worth of knowing/)
    await page.context().close()
  },
)

test.runIf(inLongForm)('two people save the same design: the second sees both changes and keeps both', async () => {
  const [first, second] = [await world.open('/designs/shearwater'), await world.open('/designs/shearwater')]
  for (const page of [first, second]) {
    await page.getByText('The robot: name, size, drive, form, reliability').click()
  }
  await first.locator('[data-place="robot/drive/topSpeed"]').last().fill('4.1')
  await first.getByRole('button', { name: 'Save', exact: true }).click()
  await first.getByText('Saved as revision 2.').waitFor()
  await second.locator('[data-place="robot/form/spread"]').fill('1.2')
  await second.getByRole('button', { name: 'Save', exact: true }).click()
  const panel = second.getByRole('dialog', { name: 'Somebody saved in between' })
  await panel.getByText('robot › drive › topSpeed').waitFor()
  await panel.getByText('robot › form › spread').waitFor()
  await panel.getByRole('button', { name: 'Keep both' }).click()
  await second.getByText('Saved as revision 3.').waitFor()
  const saved = await fetch(`${world.url}/api/documents/design/shearwater`).then((response) => response.json())
  expect(saved.body.robot.drive.topSpeed).toBe(4.1)
  expect(saved.body.robot.form.spread).toBe(1.2)
  await first.context().close()
  await second.context().close()
})

test.runIf(inLongForm)('a lost connection while saving loses nothing: not now, not after a reload', async () => {
  const page = await world.open('/designs/kittiwake')
  await page.getByText('The robot: name, size, drive, form, reliability').click()
  await page.route('**/trpc/**', (route) => route.abort())
  await page.locator('[data-place="robot/drive/topSpeed"]').last().fill('3.33')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('The server does not answer').first().waitFor()
  await expect.poll(() => page.locator('[data-place="robot/drive/topSpeed"]').last().inputValue()).toBe('3.33')
  await page.unroute('**/trpc/**')
  world.errors.length = 0
  await page.reload()
  await page.getByText('Unsaved edits of').waitFor()
  await page.getByText('The robot: name, size, drive, form, reliability').click()
  await expect.poll(() => page.locator('[data-place="robot/drive/topSpeed"]').last().inputValue()).toBe('3.33')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  await page.context().close()
})

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
