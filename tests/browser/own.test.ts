import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { bar, openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const file = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) })

const chosenGame = (page: Page) =>
  page.getByLabel('Game').evaluate((field: HTMLSelectElement) => field.selectedOptions[0]?.textContent)

const bring = (page: Page, name: string, text: string) =>
  page.locator('input[type=file]').setInputFiles(file(name, text))

test('a team’s own game: copied and changed, a robot sketched, two ways compared, a decision written', async () => {
  const page = await world.open('/games')
  await page.getByRole('button', { name: 'Copy ‘Breakwater’' }).click()
  await page.getByLabel('Name of the game').fill('Harbour trial')
  await page.getByText('Goal: Gantry').click()
  await page.getByRole('textbox', { name: 'A piece in teleop' }).fill('9')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()

  await page.getByRole('link', { name: 'Designs', exact: true }).click()
  await page.getByLabel('Name').fill('Tern')
  expect(await chosenGame(page)).toBe('Harbour trial')
  await page.getByRole('button', { name: 'Sketch it' }).click()
  await page.getByRole('heading', { name: 'Tern', level: 1 }).waitFor()
  const guessed = await shownPoints(page)
  expect(guessed).toBeGreaterThan(5)

  await page.getByRole('button', { name: 'New way to play' }).click()
  const way = page.getByRole('dialog', { name: 'Way to play' })
  await way.getByRole('textbox', { name: 'Name' }).fill('Tern, to the buzzer')
  await way.getByLabel('Endgame').selectOption({ label: 'left out' })
  await way.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Endgame left out.').waitFor({ state: 'attached' })
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'New way to play' }).click()
  await way.getByRole('textbox', { name: 'Name' }).fill('Tern, finishing')
  await way.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Endgame when it pays.').waitFor({ state: 'attached' })
  await page.keyboard.press('Escape')

  await page.getByRole('link', { name: 'Trade-offs', exact: true }).click()
  await page.getByLabel('Question').fill('Do we finish?')
  expect(await chosenGame(page)).toBe('Harbour trial')
  await page.getByRole('button', { name: 'Compare them' }).click()
  await page.getByText('Choose at least two ways to play.').waitFor()
  await page.getByLabel('Tern, to the buzzer').check()
  await page.getByLabel('Tern, finishing').check()
  await page.getByRole('button', { name: 'Compare them' }).click()
  await page.getByText('Computed in your browser from the documents as they stand here.').waitFor()
  // For one robot, finishing when it pays can not be worse than never.
  await expect.poll(() => page.locator('.answer').textContent()).toMatch(/^Tern, finishing/)

  // Not kept yet is not kept otherwise; kept and saved is the same, also after the way to the database and back.
  const otherwise = page.getByText('What is stored was computed otherwise.')
  await page.getByText('before it is computed anew').waitFor()
  await page.getByRole('button', { name: 'Keep this result in the comparison' }).click()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  await expect.poll(() => otherwise.count()).toBe(0)

  await page.getByLabel('Decision').fill('We finish')
  await page.getByRole('button', { name: 'Make a decision record' }).click()
  await page.getByRole('heading', { name: 'We finish', level: 1 }).waitFor()
  await page.getByRole('link', { name: 'To the trade-off' }).click()
  await page.getByText('Computed in your browser from the documents as they stand here.').waitFor()
  await expect.poll(() => page.getByRole('button', { name: 'Keep this result in the comparison' }).count()).toBe(0)
  await expect.poll(() => otherwise.count()).toBe(0)
  await page.context().close()
})

test.runIf(inLongForm)(
  'of two level options none is chosen by itself: who writes the decision down says which',
  async () => {
    const way = await fetch(`${world.url}/api/documents/option/kittiwake-best`).then((response) => response.json())
    const twin = { ...way.body, option: { ...way.body.option, id: 'twin', name: 'The same again' } }
    const put = await fetch(`${world.url}/api/documents/option/twin`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ base: null, body: twin }),
    })
    expect(put.status).toBe(200)
    const page = await world.open('/trade-offs')
    await page.getByLabel('Question').fill('Which of two?')
    // Proposed is the game that was saved last, which is another one by now.
    await page.getByLabel('Game').selectOption({ label: 'Breakwater' })
    await page.getByLabel(way.name, { exact: true }).check()
    await page.getByLabel('The same again').check()
    await page.getByRole('button', { name: 'Compare them' }).click()
    await page.getByText('Computed in your browser from the documents as they stand here.').waitFor()
    await page.getByLabel('Decision').fill('We take the other')
    await page.getByRole('button', { name: 'Make a decision record' }).click()
    await page.getByText('The options are level: please say which one you take.').waitFor()
    await page.getByLabel('Chosen').selectOption({ label: 'The same again' })
    await page.getByRole('button', { name: 'Make a decision record' }).click()
    await page.getByRole('heading', { name: 'We take the other', level: 1 }).waitFor()
    const stored = await fetch(`${world.url}/api/documents/decision/${page.url().split('/').at(-1)}`)
    expect((await stored.json()).body.chosen).toBe('twin')
    await page.context().close()
  },
)

test.runIf(inLongForm)('a game without a finish asks nothing about leaving for one', async () => {
  const game = (await fetch(`${world.url}/api/documents/game/breakwater`).then((response) => response.json())).body
  const open = { ...game, id: 'open-water', name: 'Open water', finishes: [], bonuses: [] }
  const page = await world.open('/games')
  await bring(page, 'open-water.json', JSON.stringify(open))
  await page.getByRole('link', { name: 'Sketch a robot for it' }).click()
  await page.getByLabel('Name').fill('Skua')
  expect(await chosenGame(page)).toBe('Open water')
  // What the workers are asked from here on.
  await page.evaluate(() => {
    const { postMessage } = Worker.prototype
    const asked: string[] = []
    Object.assign(window, { asked })
    Worker.prototype.postMessage = function (this: Worker, question: { kind: string }) {
      asked.push(question.kind)
      return postMessage.call(this, question)
    }
  })
  await page.getByRole('button', { name: 'Sketch it' }).click()
  expect(await shownPoints(page)).toBeGreaterThan(5)
  // The plan of a design that nobody has edited is made once, not once more as that of the saved one.
  const asked = await page.evaluate(() => (window as unknown as { asked: string[] }).asked)
  expect(asked.filter((kind) => kind === 'quick')).toEqual(['quick'])
  await page.getByRole('button', { name: 'New way to play' }).click()
  const way = page.getByRole('dialog', { name: 'Way to play' })
  await way.getByLabel('Starts at').waitFor()
  await expect.poll(() => way.getByLabel('Endgame').count()).toBe(0)
  await page.keyboard.press('Escape')
  await expect.poll(() => page.getByText(/^Endgame /).count()).toBe(0)
  await page.goto(`${world.url}/quick-sheet?game=breakwater`)
  await page.getByLabel('Game').waitFor()
  expect(await chosenGame(page)).toBe('Breakwater')
  await page.goto(`${world.url}/quick-sheet?game=open-water`)
  await page.getByLabel('Name').fill('No finish')
  await page.getByRole('button', { name: 'Begin it' }).click()
  await page.getByRole('button', { name: 'Add a way' }).click()
  await page.getByRole('columnheader', { name: 'Points' }).first().waitFor()
  await expect.poll(() => page.getByRole('columnheader', { name: /[Ff]inish/ }).count()).toBe(0)
  await page.context().close()
})

test('a file that is no JSON, no game, or a game with faults is answered in words, and nothing is saved', async () => {
  const page = await world.open('/games')
  const count = async () => (await fetch(`${world.url}/api/documents/game`).then((response) => response.json())).length
  const before = await count()
  await bring(page, 'photo.json', '\u0000PNG')
  await page.getByText('The file is not JSON.').waitFor()
  await bring(page, 'other.json', '{"robot": {}}')
  await page.getByText('The file does not hold a game').waitFor()
  const game = (await fetch(`${world.url}/api/documents/game/breakwater`).then((response) => response.json())).body
  const faulty = { ...game, id: 'faulty', clock: { ...game.clock, teleop: -5 }, surprise: 1 }
  // The server refuses it, which the browser reports as a failed request.
  await bring(page, 'faulty.json', JSON.stringify(faulty))
  await page.getByText('clock › teleop').waitFor()
  await page.getByText('surprise').first().waitFor()
  expect(await count()).toBe(before)
  await bring(page, 'good.json', JSON.stringify({ ...game, id: 'good', name: 'From a file' }))
  await page.getByRole('heading', { name: 'From a file', level: 1 }).waitFor()
  expect(await count()).toBe(before + 1)
  await page.context().close()
})

test('a removed document can be taken back', async () => {
  const page = await world.open('/designs')
  await page.getByRole('button', { name: 'Remove ‘Puffin’' }).click()
  await page.getByText('‘Puffin’ is removed from the list').waitFor()
  await page.getByRole('button', { name: 'Take it back' }).click()
  await page.getByRole('link', { name: 'Puffin' }).waitFor()
  await page.context().close()
})

test.runIf(inLongForm)('a bar’s end is dragged, and the stage takes as long as it was drawn', async () => {
  const page = await world.open('/designs/kittiwake')
  await shownPoints(page)
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  const stage = bar(page, 'Raise the arm')
  await stage.waitFor()
  const was = Number(await stage.getAttribute('aria-valuenow'))
  const end = (await stage.locator('[data-end]').boundingBox())!
  await page.mouse.move(end.x + end.width / 2, end.y + end.height / 2)
  await page.mouse.down()
  await page.mouse.move(end.x + end.width / 2 + 60, end.y + end.height / 2, { steps: 5 })
  await page.mouse.up()
  await page.waitForFunction(
    (value) =>
      Number(document.querySelector('[role=slider][aria-label^="Raise the arm"]')?.getAttribute('aria-valuenow')) >
      value + 0.2,
    was,
  )
  await page.getByText('Unsaved edits on revision 1').waitFor()
  await page.context().close()
})
