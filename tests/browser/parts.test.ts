import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Part } from '../../src/model/timing/parts.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { wider } from './screens.ts'
import { chooseUnits, openWorld, type World } from './world.ts'

/** A busy machine takes its time. */
const soon = { timeout: 30_000 }

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const stored = async (id: string): Promise<{ revision: number; body: { part: Part } }> =>
  fetch(`${world.url}/api/documents/part/${id}`).then((answer) => answer.json())
const count = async (): Promise<number> =>
  (await fetch(`${world.url}/api/documents/part`).then((answer) => answer.json())).length

const look = async (page: Page, table: string) => {
  await page.getByLabel('Table', { exact: true }).fill(table)
  await page.getByRole('button', { name: 'Look at it' }).click()
}
const verdicts = (page: Page) => page.getByRole('region', { name: 'What each line would do' }).locator('tbody tr')

test('a part is changed in inches, saved, brought out as CSV and in again line by line', async () => {
  const page = await world.open('/designs')
  await page.getByRole('link', { name: /^Parts shelf/ }).click()
  await page.getByRole('link', { name: 'Generic cylinder, 40 mm bore, 200 mm stroke' }).waitFor()
  expect(await page.title()).toBe('Parts shelf · Cyclewright')
  await page.locator('.masthead nav a[aria-current=true]', { hasText: 'Designs' }).waitFor()
  await chooseUnits(page, 'inchPound')
  await page.getByRole('link', { name: 'Generic cylinder, 40 mm bore, 200 mm stroke' }).click()

  const rod = page.getByLabel('Rod diameter')
  await rod.fill('1 9/16')
  await page.getByText('At most 0.95 of the bore of 1.5748 in, not 1.5625 in.').first().waitFor()
  await rod.fill('thick')
  await page.getByText('‘thick’ is not a length').waitFor()
  await expect.poll(() => page.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(true)
  await rod.fill('5/8')
  await page.getByLabel('Stroke').fill('250 mm')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  expect((await stored('cylinder-40')).body.part).toMatchObject({ bore: 0.04, rod: 0.015875, stroke: 0.25 })

  await page.getByRole('link', { name: 'To the parts shelf' }).click()
  const cylinders = page.getByRole('region', { name: 'Cylinders' }).last()
  await cylinders.getByText('9.8425').waitFor()
  await page.getByLabel('‘Cylinders’ as a file').click()
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: '‘Cylinders’ as CSV' }).click()
  const file = await download
  expect(file.suggestedFilename()).toBe('cylinders.csv')
  const csv = await readFile(await file.path(), 'utf8')

  const before = await count()
  await look(page, csv)
  await expect
    .poll(() => verdicts(page).allTextContents(), soon)
    .toEqual([
      expect.stringContaining('As on the shelf (revision 1): nothing to do.'),
      expect.stringContaining('As on the shelf (revision 2): nothing to do.'),
    ])
  await page.getByText('There is nothing to save.').waitFor()

  const [head, small, wide] = csv.trim().split('\r\n') as [string, string, string]
  const changed = wide.replace(/[^,]*$/, '0.3')
  const fresh = small.replace('cylinder-20', 'cylinder-own')
  const broken = small.replace('cylinder-20', 'cylinder-broken').replace(/[^,]*$/, 'long')
  await look(page, [head, changed, fresh, broken].join('\n'))
  await expect
    .poll(() => verdicts(page).allTextContents(), soon)
    .toEqual([
      expect.stringContaining('Becomes revision 3; other than now: Stroke.'),
      expect.stringContaining('New on the shelf.'),
      expect.stringContaining('‘stroke_m’: ‘long’ is not a number.'),
    ])
  // Somebody is quicker with the first of them.
  const current = await stored('cylinder-40')
  const put = await fetch(`${world.url}/api/documents/part/cylinder-40`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ base: 2, body: { ...current.body, part: { ...current.body.part, source: 'Measured' } } }),
  })
  expect(put.status).toBe(200)
  const save = page.getByRole('button', { name: 'Save 2 parts' })
  await expect.poll(() => save.isDisabled()).toBe(true)
  await page.getByLabel('Save the good lines only; one stays out').check()
  await expect.poll(() => save.isDisabled()).toBe(true)
  expect(await count()).toBe(before)
  await page.getByLabel('Yes, make a new revision of the part that is there already').check()
  await save.click()
  await page.getByText('One part is saved.').waitFor()
  await expect.poll(() => verdicts(page).first().textContent(), soon).toContain('Somebody saved it in between')
  expect((await stored('cylinder-40')).body.part).toMatchObject({ source: 'Measured', stroke: 0.25 })
  await page.getByRole('button', { name: 'Look at it' }).click()
  await expect
    .poll(() => verdicts(page).allTextContents(), soon)
    .toEqual([
      expect.stringContaining('Becomes revision 4; other than now: Source and Stroke.'),
      expect.stringContaining('As on the shelf (revision 1): nothing to do.'),
      expect.stringContaining('is not a number'),
    ])
  await page.getByLabel('Save the good lines only; one stays out').check()
  await page.getByLabel('Yes, make a new revision of the part that is there already').check()
  await page.getByRole('button', { name: 'Save one part' }).click()
  await page.getByText('Saved as revision 4.').waitFor()
  expect(await count()).toBe(before + 1)
  expect((await stored('cylinder-40')).body.part).toMatchObject({ stroke: 0.3 })

  await page.getByRole('button', { name: 'Remove ‘Generic cylinder, 20 mm bore, 100 mm stroke’' }).first().click()
  await look(page, `${head}\n${small}`)
  await expect
    .poll(() => verdicts(page).textContent(), soon)
    .toContain('Was removed from the shelf, and comes back as revision 2.')
  await page.getByRole('button', { name: 'Take it back' }).click()
  await page.getByRole('button', { name: 'Take it back' }).waitFor({ state: 'detached' })
  expect(await count()).toBe(before + 1)
  await page.context().close()
})

test.runIf(inLongForm)(
  'on a phone a new compressor gets its points, and what was found in a broken file is read without a fault of access',
  async () => {
    const page = await world.open('/parts', { viewport: { width: 390, height: 800 } })
    await page.getByLabel('Kind', { exact: true }).selectOption('compressor')
    await page.getByRole('button', { name: 'Add it' }).click()
    await page.getByText('Please give the part a name.').waitFor()
    await page.getByLabel('Name', { exact: true }).fill('Own compressor')
    await page.getByRole('button', { name: 'Add it' }).click()
    await page.getByRole('button', { name: 'Add a point' }).click()
    await page.getByLabel('Pressure 3, absolute').fill('8 barg')
    await page.getByText('More than the pressure before it, 1000 kPa(a), not 901.33 kPa(a).').first().waitFor()
    await page.getByLabel('Pressure 3, absolute').fill('11 barg')
    await page.getByLabel('Flow 3').fill('0')
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await page.getByText('Saved as revision 2.').waitFor()
    const [id] = page.url().split('/').slice(-1)
    const { part } = (await stored(id!)).body
    expect(part.kind === 'compressor' && part.flow.at(-1)).toEqual([1_201_325, 0])
    expect(part.source).toContain('Placeholder numbers')
    expect(await wider(page)).toBe(0)
    expect(await findings(page)).toEqual([])

    await page.getByRole('link', { name: 'To the parts shelf' }).click()
    // So many lines are more questions than one address of the server holds.
    const tanks = Array.from({ length: 25 }, (_, index) => `Own tank ${index};plate;2026-11-26;0,6;8`)
    await page.getByLabel('CSV file with parts').setInputFiles({
      name: 'tanks.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(['name;source;date;volume_l;highest_pressure_bar_gauge', ...tanks, 'x;;;-1;80'].join('\n')),
    })
    await expect
      .poll(() => verdicts(page).allTextContents(), soon)
      .toEqual([
        ...tanks.map(() => expect.stringContaining('New on the shelf.')),
        expect.stringMatching(
          /volume_l: At least 0\.001.l, not −1.l.*At most 2000.kPa\(a\), not 8101\.33.kPa\(a\).*‘’ is not a day/,
        ),
      ])
    expect(await wider(page)).toBe(0)
    expect(await findings(page)).toEqual([])
    expect(world.errors).toEqual([])
    await page.context().close()
  },
)
