import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readCsv } from '../../web/tables/csv.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const path = '/decisions/leave-the-hook-out'
const saved = async () =>
  (await fetch(`${world.url}/api/documents/decision/leave-the-hook-out`).then((answer) => answer.json())).body

describe('on one page', () => {
  let page: Page
  beforeAll(async () => {
    page = await world.open(path)
  })
  afterAll(() => page.context().close())

  test('one button adds who agrees with the time, one takes a name off, and undo brings it back', async () => {
    await page.getByRole('button', { name: 'I agree' }).click()
    await page.getByText('Please say who agrees.').waitFor()
    await page.getByLabel('Name or nickname').fill('Tilly')
    const before = Date.now()
    await page.getByRole('button', { name: 'I agree' }).click()
    await page.getByText('‘Tilly’ is added.').waitFor()
    await page.getByRole('button', { name: 'I agree' }).click()
    await page.getByText('‘Tilly’ has agreed already.').waitFor()
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await page.getByText('Saved as revision 2.').waitFor()
    const added = (await saved()).agreed.at(-1)
    expect(added.who).toBe('Tilly')
    // Kept to the minute.
    expect(Math.abs(Date.parse(added.on) - before)).toBeLessThan(61_000)

    await page.getByRole('button', { name: 'Take ‘Tilly’ off' }).click()
    await page.getByText('‘Tilly’ is taken off.').waitFor()
    await expect.poll(() => page.locator('.agreed').getByText('Tilly').count()).toBe(0)
    await page.locator('.decision').getByRole('button', { name: 'Undo' }).click()
    await page.locator('.agreed').getByText('Tilly').waitFor()
    // As it was saved: nothing is left to save.
    await page.locator('button:disabled', { hasText: /^Save$/ }).waitFor()
  })

  test('a table is kept as CSV with all its digits, and its description beside it', async () => {
    const kept = async (button: string) => {
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: button, exact: true }).click(),
      ])
      return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') }
    }
    await page.getByLabel('‘Options’ as a file').click()
    const csv = await kept('‘Options’ as CSV')
    const description = await kept('datapackage.json of ‘Options’')
    expect([csv.name, description.name]).toEqual(['options.csv', 'datapackage.json'])
    const { path: named, schema } = JSON.parse(description.text).resources[0]
    expect(named).toBe(csv.name)
    const rows = await readCsv(csv.text, schema.fields)
    const { options } = (await saved()).snapshot.result
    expect(rows.map((row) => row.slice(0, 4))).toEqual(
      options.map(({ id, mean, sd }: { id: string; mean: number; sd: number }) => [id, expect.any(String), mean, sd]),
    )
    await page.getByLabel('with byte-order mark').check()
    const marked = await kept('‘Options’ as CSV')
    expect(marked.text).toBe(`\ufeff${csv.text}`)
  })

  test('what a record lacks is said until it is written', async () => {
    const missing = page.getByRole('region', { name: 'Before it can be defended' })
    await expect.poll(() => missing.count()).toBe(0)
    await page.getByRole('button', { name: 'Write on it' }).click()
    await page.getByRole('button', { name: 'Add a line to Objections' }).click()
    await page.getByLabel('Objection', { exact: true }).last().fill('We have no time to practise.')
    await missing.getByText('One objection is not answered.').waitFor()
    await page.getByLabel('Answer').last().fill('Then the hook has none either.')
    await missing.waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Add a line to How it will be checked at the event' }).click()
    await page.getByLabel('Quantity').last().fill('Buoys on the gantry')
    await page.getByRole('button', { name: 'Read' }).click()
    await page.getByRole('rowheader', { name: 'Buoys on the gantry' }).waitFor()
    await page.getByText('We have no time to practise.').waitFor()
  })
})

test.runIf(inLongForm)(
  'every table of a trade-off and of a design can be kept, its numbers with all their digits',
  async () => {
    for (const { at, ready, least } of [
      { at: '/trade-offs/hook-or-practice', ready: 'The dashed line is where', least: 5 },
      { at: '/designs/shearwater', ready: 'What to do next', least: 2 },
    ]) {
      const page = await world.open(at)
      await page.getByText(ready).first().waitFor()
      await page.waitForFunction((count) => document.querySelectorAll('main table').length >= count, least)
      await page.getByRole('button', { name: 'Tables as files' }).click()
      const panel = page.getByRole('dialog', { name: 'Tables as files' })
      const lines = panel.getByRole('listitem')
      await expect.poll(() => lines.count()).toBeGreaterThanOrEqual(least)
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        lines
          .first()
          .getByRole('button', { name: /as CSV$/ })
          .click(),
      ])
      const [head, ...rows] = (await readFile(await file.path(), 'utf8')).trimEnd().split('\r\n')
      expect(head).toMatch(/^[a-z0-9_]+(,[a-z0-9_]+)+$/)
      expect(rows.length).toBeGreaterThan(0)
      expect(rows.join()).toMatch(/,\d+\.\d{5,}/)
      expect(await findings(page, undefined, 'dialog[open]')).toEqual([])
      await page.context().close()
    }
  },
)

/** Saves a document anew with something changed, as another program would. */
async function change(kind: string, id: string, edit: (body: Body) => void): Promise<void> {
  const address = `${world.url}/api/documents/${kind}/${id}`
  const { body, revision } = await fetch(address).then((answer) => answer.json())
  edit(body)
  const answer = await fetch(address, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ base: revision, body }),
  })
  expect(answer.status).toBe(200)
}

// biome-ignore lint/suspicious/noExplicitAny: the test changes documents of several kinds at places that it knows
type Body = any

test('computed again, the record says what moved, which documents did it, and that the decision flips', async () => {
  const page = await world.open(path)
  await page.getByRole('button', { name: 'Compute again' }).click()
  await page.getByText('Nothing that it was made from has changed since.').waitFor()
  await page.getByText('The decision stands').waitFor()

  await change('design', 'shearwater', (design) => {
    design.robot.drive.topSpeed += 1
    design.robot.finish.davit.success = 0.95
  })
  await change('game', 'breakwater', (game) => {
    game.finishes.find(({ id }: { id: string }) => id === 'davit').points += 4
  })
  await page.reload()
  await page.getByRole('button', { name: 'Compute again' }).click()
  await page.getByText('The decision flips').waitFor()
  await page.getByText(/^‘Shearwater, finish when it pays’ went from .* from the game ‘Breakwater’/).waitFor()
  const table = page.getByRole('table', { name: 'What moved, and why' })
  const rows = await table
    .locator('tbody tr')
    .evaluateAll((lines) =>
      lines.map((line) =>
        [...line.querySelectorAll('td')].map(({ textContent }) => textContent!.replace('\u2212', '-').split(' ')[0]),
      ),
    )
  expect(rows.length).toBe(5)
  // What was written, and every part, each rounded to a tenth, make what is now: in both options and in the lead.
  for (const column of [0, 1, 2]) {
    const numbers = rows.map((row) => Number(row[column]))
    const parts = numbers.slice(0, -1).reduce((sum, part) => sum + part, 0)
    expect(Math.abs(parts - numbers.at(-1)!)).toBeLessThanOrEqual(0.05 * numbers.length + 1e-9)
  }
  // The number of now opens: the same sum, in a panel, with the revisions that it was computed with.
  await table.getByRole('row', { name: /^Now/ }).getByRole('button').first().click()
  const opened = page.getByRole('dialog', { name: 'How this came about' })
  await opened.getByText('the design ‘Shearwater’, revision 2', { exact: false }).waitFor()
  await expect.poll(() => opened.getByRole('table', { name: 'Parts' }).getByRole('row').count()).toBe(5)
  await page.keyboard.press('Escape')
  await page.getByText('What changed in the design ‘Shearwater’: 2 places').click()
  await page.getByRole('row', { name: /drive › topSpeed/ }).waitFor()
  expect(await findings(page)).toEqual([])
  await page.getByRole('button', { name: 'Write on it' }).click()
  await page.getByLabel('What else is said about checking it').waitFor()
  expect(await findings(page)).toEqual([])
  await page.context().close()
})

const looks = [
  { colorScheme: 'dark', width: 360 },
  { colorScheme: 'light', width: 1280 },
] as const

test.runIf(inLongForm).each(looks)(
  'opened, written on and computed again it has no finding of the accessibility scan, $colorScheme at $width px',
  async ({ colorScheme, width }) => {
    const page = await world.open(path, { colorScheme, viewport: { width, height: 800 } })
    const scan = async () => {
      expect(await findings(page)).toEqual([])
      const wider = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(wider).toBeLessThanOrEqual(0)
    }
    await page.getByLabel('‘Options’ as a file').click()
    await page.getByRole('button', { name: 'Compute again' }).click()
    await page.getByText(/^The decision (flips|stands)/).waitFor()
    await page.getByText(/^What changed in the design/).click()
    await scan()
    await page.getByRole('button', { name: 'Write on it' }).click()
    await page.getByLabel('What else is said about checking it').waitFor()
    await scan()
    await page.context().close()
  },
)

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
