import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const tooWide = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

const json = (path: string) => fetch(world.url + path).then((response) => response.json())

const typed = [
  { name: 'Piers, one each', collect: '7', score: '6', success: '95', load: '1' },
  { name: 'Piers, three each', collect: '17', score: '13', success: '90', load: '3' },
  { name: 'Piers, two each', collect: '13', score: '9', success: '92', load: '2' },
  { name: 'Piers, slowly', collect: '14', score: '12', success: '95', load: '1' },
  { name: 'Piers, four each', collect: '20 24 36', score: '16', success: '85', load: '4' },
]

const points = async (page: Page) => (await page.getByTestId('way-points').allInnerTexts()).map((text) => Number(text))

/** The ranking follows what is typed: waits until it names that way first. */
const first = (page: Page, name: string) =>
  page.getByTestId('ranking').locator('tbody tr').first().getByRole('rowheader', { name }).waitFor()

test('five ways typed and ranked, a round of guesses by three phones, and a design that begins with the same numbers', async () => {
  const page = await world.open('/quick-sheet')
  await page.getByLabel('Name').fill('Kick-off')
  await page.getByRole('button', { name: 'Begin it' }).click()
  await page.getByText('No way to play yet.').waitFor()
  for (const [index, way] of typed.entries()) {
    await page.getByRole('button', { name: 'Add a way' }).click()
    const row = page.locator('table.quick tbody tr').nth(index)
    // With what it begins is said.
    await page.getByText(`‘Way ${index + 1}’ begins with Outer slipway and Piers`).waitFor()
    // The new way’s name is ready to be typed over.
    await page.waitForFunction((at) => document.activeElement?.matches(`[data-place="ways/${at}/name"]`), index)
    await page.keyboard.type(way.name)
    await row.getByLabel(/^Pieces a trip/).fill(way.load)
    await row.getByLabel(/^Collect, s/).fill(way.collect)
    await row.getByLabel(/^Score, s/).fill(way.score)
    await row.getByLabel(/^Scores, %/).fill(way.success)
  }
  await page.waitForFunction(() => document.querySelectorAll('[data-testid=ranking] tbody tr').length === 5)
  await page.getByText(/Middling play: ‘Piers, (two|three|four) each’ leads by \d/).waitFor()
  await page.getByText(/^(Which way is best depends|‘.*’ leads at all three|The order is the same)/).waitFor()

  // A faster trip moves the way up at once; undo takes it back.
  const slow = page.locator('table.quick tbody tr').nth(3)
  await slow.getByLabel(/^Collect, s/).fill('1')
  await slow.getByLabel(/^Score, s/).fill('1')
  await first(page, 'Piers, slowly')
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect.poll(() => slow.getByLabel(/^Collect, s/).inputValue()).toBe('14')
  // What can not be read is answered beside it, stays as typed, and keeps the sheet from being saved.
  await slow.getByLabel(/^Collect, s/).fill('5 3 9')
  await slow.getByText('Write low, likely, high in this order.').waitFor()
  await expect.poll(() => page.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(true)
  await slow.getByLabel(/^Collect, s/).fill('14')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()

  await page.getByLabel('Leg', { exact: true }).selectOption({ label: 'scoring' })
  await page.getByRole('button', { name: 'Open a round' }).click()
  const panel = page.getByRole('dialog')
  await panel.getByText('No phone can reach this server').waitFor()
  const code = (await panel.locator('.code').textContent())!
  expect(await findings(page)).toEqual([])
  const phones = await Promise.all(
    [1, 2, 3].map(() => world.open(`/guess/${code}`, { viewport: { width: 390, height: 844 }, hasTouch: true })),
  )
  for (const [index, phone] of phones.entries()) {
    await phone.getByText('How long does one trip to score take: to Piers?').waitFor()
    await phone.getByLabel('The shortest').fill(String(3 + index))
    await phone.getByLabel('The usual').fill(String(1 + index))
    await phone.getByLabel('The longest').fill(String(11 + index))
    await phone.getByRole('button', { name: 'Send my guess' }).click()
    await phone.getByText('at least as long as the shortest').waitFor()
    await phone.getByLabel('The usual').fill(String(7 + index))
    await phone.getByRole('button', { name: 'Send my guess' }).click()
    await phone.getByText('Your guess is in.').waitFor()
  }
  await phones[0]!.getByLabel('The longest').fill('21')
  await phones[0]!.getByRole('button', { name: 'Correct my guess' }).click()
  await phones[0]!.getByText('You guessed 3, 7 and 21 s.').waitFor()
  await panel.getByText('3 have guessed').waitFor()
  // Before the round is closed nobody sees what the others guessed: not on the screen, not on the other phones.
  for (const shown of [await panel.innerText(), await phones[1]!.locator('main').innerText()])
    expect(shown).not.toMatch(/\b21\b/)
  expect(await findings(phones[0]!)).toEqual([])
  expect(await tooWide(phones[0]!)).toBeLessThanOrEqual(0)

  // A fourth phone looks and does not guess; another browser can look at the round and not close it.
  const looking = await world.open(`/guess/${code}`, { viewport: { width: 390, height: 844 } })
  await panel.getByText('3 have guessed · 1 phone is still out').waitFor()
  const elsewhere = await world.open(new URL(page.url()).pathname)
  await elsewhere.getByRole('button', { name: `Show round ${code}` }).click()
  await elsewhere.getByText('The round was opened on another device').waitFor()
  await expect.poll(() => elsewhere.getByRole('button', { name: /^Close the round/ }).count()).toBe(0)
  await elsewhere.getByRole('button', { name: 'Close it here all the same' }).click()
  await elsewhere.getByText('the round says that it was not closed where it was opened').waitFor()
  if (inLongForm) expect(await findings(elsewhere)).toEqual([])
  await elsewhere.getByRole('button', { name: 'Not yet' }).click()
  for (const other of [looking, elsewhere]) await other.context().close()

  await panel.getByRole('button', { name: 'Close the round and show the guesses' }).click()
  await panel.getByText('1 phone has opened the round and not guessed yet.').waitFor()
  await panel.getByRole('button', { name: 'Close it now' }).click()
  // Lows 3, 4, 5: 3.2 is their first tenth; highs 12, 13, 21: 19.4 is their last.
  await panel.getByText('Together: 3.2 · 8 · 19.4 s').waitFor()
  await phones[1]!.getByRole('heading', { name: 'The round is closed' }).waitFor()
  await phones[1]!.getByText('Together: 3.2 · 8 · 19.4 s').waitFor()
  // A closed round is scanned on a phone below.
  if (inLongForm) expect(await findings(page)).toEqual([])
  await panel.getByLabel(`Guesses of round ${code}`).first().click()
  const [file] = await Promise.all([page.waitForEvent('download'), panel.getByRole('button', { name: /CSV/ }).click()])
  expect((await readFile(await file.path(), 'utf8')).split('\r\n')).toEqual([
    'number,low,likely,high',
    '1,3,7,21',
    '2,4,8,12',
    '3,5,9,13',
    '',
  ])
  await panel.getByRole('button', { name: 'Take it for the leg' }).click()
  await page.keyboard.press('Escape')
  const asked = page.locator('table.quick tbody tr').first()
  await expect.poll(() => asked.getByLabel(/^Score, s/).inputValue()).toBe('3.2 8 19.4')
  await asked.getByText('from a round of guesses').waitFor()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 3.').waitFor()
  await page.waitForFunction(() => !document.querySelector('[style*="opacity: 0.55"]'))
  const sheetPoints = (await points(page))[0]!

  await page.getByRole('button', { name: 'Make designs of all ways, and compare them' }).click()
  await page.getByRole('link', { name: 'Trade-off ‘Kick-off’' }).waitFor()
  const [comparison] = (await json('/api/documents/comparison')).filter(
    ({ name }: { name: string }) => name === 'Kick-off',
  )
  const { body } = await json(`/api/documents/comparison/${comparison.id}`)
  // The group’s belief: usual trips 7, 8 and 9, from 7.2 to 8.8 around 8.
  expect(body.inputs).toEqual([
    {
      id: 'Piers, one each: scoring',
      paths: ['/options/0/robot/score/piers/0/whole'],
      as: 'factor',
      low: 7.2 / 8,
      likely: 1,
      high: 8.8 / 8,
    },
  ])
  await page.getByRole('link', { name: 'Design ‘Piers, one each’' }).click()
  await page.getByRole('heading', { name: 'Piers, one each', level: 1 }).waitFor()
  expect(await shownPoints(page)).toBeCloseTo(sheetPoints, 1)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  await page.getByRole('button', { name: 'Split into the drive and a stage' }).click()
  const rest = page.getByRole('slider', { name: 'Work in place, seconds' }).first()
  await rest.waitFor()
  await rest.focus()
  await page.keyboard.press('Enter')
  await page.getByTestId('stage-form').getByRole('button', { name: 'Cut in two' }).click()
  await page.getByRole('slider', { name: 'Work in place, second half, seconds' }).first().waitFor()
  for (const phone of phones) await phone.context().close()
  await page.context().close()
})

test.runIf(inLongForm)(
  'a round whose browser forgot it is closed here all the same, removed, taken back, and goes into a file and out of it',
  async () => {
    const send = (path: string, method: string, body: unknown) =>
      fetch(world.url + path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
    const sheet = 'first-saturday'
    const { body } = await json(`/api/documents/quickSheet/${sheet}`)
    const asked = { sheet, way: body.ways[0].id, leg: 'collect', closingKey: 'k'.repeat(24) }
    const { code } = await send('/api/guess-rounds', 'POST', asked).then((response) => response.json())
    await send(`/api/guess-rounds/${code}/guesses/${'d'.repeat(16)}`, 'PUT', { guess: { low: 4, likely: 6, high: 9 } })
    const page = await world.open(`/quick-sheet/${sheet}`, { viewport: { width: 390, height: 844 }, hasTouch: true })
    const rounds = page.getByRole('region', { name: 'Blind guess round' })
    const show = rounds.getByRole('button', { name: `Show round ${code}` })
    const panel = page.getByRole('dialog')
    await show.click()
    await panel.getByRole('button', { name: 'Close it here all the same' }).click()
    await panel.getByRole('button', { name: 'Close it now' }).click()
    await panel.getByText('Not closed in the browser that opened it.').waitFor()
    await panel.getByText('Together: 4 · 6 · 9 s').waitFor()
    expect(await findings(page)).toEqual([])
    expect(await tooWide(page)).toBeLessThanOrEqual(0)
    await page.keyboard.press('Escape')

    const [file] = await Promise.all([
      page.waitForEvent('download'),
      rounds.getByRole('button', { name: 'Save the closed rounds as a file' }).click(),
    ])
    expect(file.suggestedFilename()).toBe('First-Saturday-rounds.json')
    const kept = JSON.parse(await readFile(await file.path(), 'utf8'))
    expect(kept.rounds).toMatchObject([{ code, guesses: [{ low: 4, likely: 6, high: 9 }] }])

    await show.click()
    await panel.getByRole('button', { name: 'Remove the round' }).click()
    await panel.getByText('You can take it back.').waitFor()
    await panel.getByRole('button', { name: 'Remove it' }).click()
    await rounds.getByText(`Round ${code} is removed.`).waitFor()
    await expect.poll(() => show.count()).toBe(0)
    await rounds.getByRole('button', { name: 'Take it back' }).click()
    await show.waitFor()

    const bring = (text: string) =>
      page
        .getByLabel('File with rounds of guesses')
        .setInputFiles({ name: 'rounds.json', mimeType: 'application/json', buffer: Buffer.from(text) })
    await bring('{"format":')
    await rounds.getByText('The file is not JSON.').waitFor()
    await bring(JSON.stringify(body))
    await rounds.getByText('The file holds no rounds of guesses.').waitFor()
    await bring(JSON.stringify({ ...kept, rounds: [{ ...kept.rounds[0], guesses: [{ low: 9, likely: 6, high: 9 }] }] }))
    await rounds.getByText('likely must be at least low (9), got 6').waitFor()
    await bring(
      JSON.stringify({ ...kept, rounds: [...kept.rounds, { ...kept.rounds[0], code: 'BCDFGH', leg: 'score' }] }),
    )
    await rounds.getByText('1 round was added; 1 is here already.').waitFor()
    await rounds.getByRole('button', { name: 'Show round BCDFGH' }).click()
    await panel.getByText(/^Brought in from a file/).waitFor()
    // The server’s refusals are seen in the console too; they were asked for.
    world.errors.length = 0
    await page.context().close()
  },
)

test.runIf(inLongForm)(
  'a file of a sheet comes in as it went out, and one with faults is answered with the place',
  async () => {
    const page = await world.open('/quick-sheet')
    const { body } = await json('/api/documents/quickSheet/first-saturday')
    const bring = (document: unknown) =>
      page.locator('input[type=file]').setInputFiles({
        name: 'sheet.json',
        mimeType: 'application/json',
        buffer: Buffer.from(JSON.stringify(document)),
      })
    await bring({
      ...body,
      id: 'faulty',
      ways: [
        { ...body.ways[0], load: 0 },
        { ...body.ways[1], goals: ['moon'] },
      ],
    })
    await page.getByText('load must be at least 1, got 0').waitFor()
    await bring({ ...body, id: 'brought', name: 'Brought in' })
    await page.getByRole('heading', { name: 'Brought in', level: 1 }).waitFor()
    expect((await json('/api/documents/quickSheet/brought')).body.ways).toEqual(body.ways)
    world.errors.length = 0
    await page.context().close()
  },
)

test.runIf(inLongForm)(
  'when the rules change, one page says which decisions flip, and a sheet is ranked under a reading, at every width of its window',
  async () => {
    const { body: game } = await json('/api/documents/game/breakwater')
    const finishes = game.finishes.map((finish: { id: string; points: number }) =>
      finish.id === 'davit' ? { ...finish, points: 30 } : finish,
    )
    await fetch(`${world.url}/api/documents/game/breakwater`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ base: 1, note: 'If 7.3 means each robot', body: { ...game, finishes } }),
    })
    const page = await world.open('/games/breakwater/consequences')
    await page.getByText('The one decision flips.').waitFor()
    const row = page.locator('tbody tr').first()
    await expect.poll(() => row.innerText()).toMatch(/Kittiwake[\s\S]*Shearwater[\s\S]*flips/)
    await page.getByLabel('Compute under').selectOption('1')
    await page.getByText('The one decision stands.').waitFor()
    await page.getByLabel('If … means …').fill('If each robot is paid for the davit')
    await page.getByLabel('Rule', { exact: true }).fill('7.3')
    await page.getByLabel('Revision of the game').selectOption('2')
    await page.getByRole('button', { name: 'Name this reading' }).click()
    await page.getByText('7.3, revision 2').waitFor()
    if (inLongForm) expect(await findings(page)).toEqual([])

    const sheet = await world.open('/quick-sheet/first-saturday')
    await sheet
      .getByText('Under ‘If each robot is paid for the davit’ the best way is ‘Gantry, then the davit’.')
      .waitFor()
    await sheet.getByRole('button', { name: 'Compute with the newest' }).click()
    await first(sheet, 'Gantry, then the davit')

    // It fits its window where the table becomes cards, and on both sides of it.
    const shown: boolean[] = []
    for (const width of [1280, 1252, 1200, 1100, 800, 360]) {
      await sheet.setViewportSize({ width, height: 740 })
      expect(await tooWide(sheet), String(width)).toBeLessThanOrEqual(0)
      shown.push(await sheet.locator('table.quick thead').isHidden())
    }
    expect([shown[0], shown.at(-1)]).toEqual([false, true])

    // Another reading in one step, from the game's own screen: what was changed is the reading's, the rules stay.
    await page.goto(`${world.url}/games/breakwater`)
    const name = page.locator('[data-place="name"]')
    await name.fill('Breakwater, read otherwise')
    await page.getByRole('button', { name: 'Save as a reading …' }).click()
    const panel = page.getByRole('dialog')
    await panel.getByRole('button', { name: 'Save the reading' }).click()
    await panel.getByText('Please say what the rule would mean.').waitFor()
    await panel.getByLabel('If … means …').fill('If the name is another one')
    expect(await findings(page)).toEqual([])
    await panel.getByRole('button', { name: 'Save the reading' }).click()
    await page.getByText('‘If the name is another one’ is a reading now, revision 3.').waitFor()
    await expect.poll(() => name.inputValue()).toBe('Breakwater')
    await page.getByText('Revision 4, saved.').waitFor()
    expect((await json('/api/documents/game/breakwater?revision=3')).name).toBe('Breakwater, read otherwise')
    await page.context().close()
    await sheet.context().close()
  },
)

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
