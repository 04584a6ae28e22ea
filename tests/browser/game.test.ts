import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Game } from '../../src/model/documents/types.ts'
import { findingsIn, modes } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { chooseUnits, openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const handle = (page: Page, name: string) => page.getByRole('slider', { name, exact: true })
const readout = (page: Page) => page.getByTestId('readout')
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true })

const stored = async (id: string): Promise<Game> =>
  (await fetch(`${world.url}/api/documents/game/${id}`).then((response) => response.json())).body

async function middle(page: Page, name: string): Promise<[number, number]> {
  const box = (await handle(page, name).boundingBox())!
  return [box.x + box.width / 2, box.y + box.height / 2]
}

/** Pixels of one metre on the drawing, from the demo's field of 16.6 m. */
const metre = async (page: Page): Promise<number> => {
  const box = (await page.getByRole('group', { name: /^The field of/ }).boundingBox())!
  return (box.width - 2) / 16.6
}

/** Waits until every edit is taken back. */
async function asSaved(page: Page): Promise<void> {
  await page.getByText('Revision 1, saved.').waitFor()
  await expect.poll(() => undo(page).isDisabled()).toBe(true)
}

/** Presses Tab until the name of what has the focus is this. */
async function tabTo(page: Page, name: string) {
  const focused = () =>
    page.evaluate(
      () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent?.trim() ?? '',
    )
  for (let press = 0; press < 120; press++) {
    if ((await focused()) === name) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`Tab never reached ${name}`)
}

test('an own game from scratch: two goals, an obstacle, a source, a finish, a set and a bonus, partly by keyboard', async () => {
  const page = await world.open('/games')
  await page.getByRole('button', { name: 'Begin', exact: true }).click()
  await page.getByText('Please give the game a name.').waitFor()
  await page.getByLabel('Name of the new game').fill('Orchard')
  await page.getByLabel('What is scored').fill('Crate')
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Orchard', level: 1 }).waitFor()
  const id = new URL(page.url()).pathname.split('/').at(-1)!

  // By keyboard alone: an obstacle and a goal are added, and what was added is moved by the arrow keys.
  await tabTo(page, 'Start 1')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowUp')
  await readout(page).getByText('1.1 m along, 4.5 m across').waitFor()
  await page.getByLabel('Add to the field').focus()
  await page.keyboard.type('an obstacle, a rec')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await readout(page).getByText('Obstacle 1: 4.8 m along, 2 m across').waitFor()
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Obstacle 1')
  await page.keyboard.press('ArrowDown')
  await readout(page).getByText('4.8 m along, 1.9 m across').waitFor()
  await page.getByText('Its partner on the other half: Obstacle 1, other half. It follows.').waitFor()
  await tabTo(page, 'Add a goal')
  await page.keyboard.press('Enter')
  // The name of what was added is ready to be typed over.
  await page.waitForFunction(() => document.activeElement?.matches('[data-place="goals/0/name"]'))
  await tabTo(page, 'Add a goal')
  await page.keyboard.press('Enter')
  await page.waitForFunction(() => document.activeElement?.matches('[data-place="goals/1/name"]'))
  await page.keyboard.type('Barn')
  await page.locator('details', { hasText: 'Goal: Barn' }).getByLabel('Pays').selectOption('hold')
  await page.locator('details', { hasText: 'Goal: Barn' }).getByLabel('A second in teleop').fill('1.5')
  await page.getByRole('button', { name: 'Move ‘Barn’ up' }).click()

  await page.getByRole('button', { name: 'Add a source' }).click()
  await page.getByLabel('It can run empty').check()
  await page.getByLabel('Pieces there').fill('24')
  await page.getByRole('button', { name: 'Add a finish' }).click()
  await page.locator('details', { hasText: 'Finish: Finish 1' }).getByLabel('Points', { exact: true }).fill('12')
  await page.getByRole('button', { name: 'Add a set' }).click()
  const set = page.locator('details', { hasText: 'Set: Set 1' })
  await set.getByLabel('Goal 1', { exact: true }).check()
  await set.getByLabel('Pieces at Goal 1').fill('3')
  await page.getByRole('button', { name: 'Add a bonus' }).click()
  const bonus = page.locator('details', { hasText: 'Bonus: Bonus 1' })
  await bonus.getByLabel('What is counted').selectOption('heldSeconds')
  await bonus.getByLabel('The number to reach').selectOption('byLevel')
  await bonus.getByLabel('Level', { exact: true }).fill('regional')
  await page.keyboard.press('Enter')
  await bonus.getByLabel('At least, at ‘regional’').fill('40')
  await page.getByLabel('Moving off the start in autonomous pays').check()
  await page.getByRole('button', { name: 'Add a tie-breaker' }).click()
  await page.getByLabel('Tie-breaker 2', { exact: true }).selectOption('pieces')

  await page.getByText('The field fits together, and this robot gets everywhere.').waitFor()
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  const game = await stored(id)
  expect(game.starts[0]!.at).toEqual([1.1, 4.5])
  expect(game.field.obstacles.map(({ outline }) => outline[0])).toEqual([
    [4.8, 1.9],
    [11.2, 6.1],
  ])
  expect(game.goals.map(({ name, award }) => [name, award.kind])).toEqual([
    ['Barn', 'hold'],
    ['Goal 1', 'each'],
  ])
  expect(game.goals[0]!.award).toMatchObject({ teleopPerSecond: 1.5 })
  expect(game.sources[0]).toMatchObject({ stock: 24, restock: null, piece: 'piece-1' })
  expect(game.finishes[0]).toMatchObject({ points: 12 })
  expect(game.sets[0]!.needs).toEqual({ 'goal-1': 3 })
  expect(game.bonuses[0]).toMatchObject({ metric: { kind: 'heldSeconds', goal: 'goal-2' }, atLeast: { regional: 40 } })
  expect(game.ranking.then).toEqual(['score', { pieces: ['goal-2', 'goal-1'] }])
  expect(game.leave).toEqual({ points: 2 })
  await page.context().close()
})

describe('on the field of the demo', () => {
  describe('on one page, each beginning with the game as it is saved', () => {
    let page: Page
    beforeAll(async () => {
      page = await world.open('/games/breakwater')
    })
    afterAll(() => page.context().close())

    test('Escape takes a drag back; a spot is dragged by mouse onto the grid, and that is one step of undo', async () => {
      const [startX, startY] = await middle(page, 'Start Middle quay')
      await page.mouse.move(startX, startY)
      await page.mouse.down()
      await page.mouse.move(startX + 60, startY + 10, { steps: 4 })
      await expect.poll(() => readout(page).textContent()).not.toContain('1.1\u00a0m along, 4.1\u00a0m across')
      await page.keyboard.press('Escape')
      await page.mouse.up()
      await readout(page).getByText('1.1 m along, 4.1 m across').waitFor()
      await expect.poll(() => undo(page).isDisabled()).toBe(true)

      const name = 'Gantry (G2), spot 2'
      const [x, y] = await middle(page, name)
      const scale = await metre(page)
      await page.getByLabel('Draw to walls, obstacles and other points').uncheck()
      await page.mouse.move(x, y)
      await page.mouse.down()
      for (let step = 1; step <= 10; step++) await page.mouse.move(x + scale * step * 0.1, y + scale * step * 0.05)
      // One metre right and half a metre down from 5.4 and 4.4, on steps of 0.1 m.
      await readout(page).getByText('6.4 m along, 3.9 m across').waitFor()
      await page.getByText('Revision 1, saved.').waitFor()
      await page.mouse.up()
      await page.getByText('Unsaved edits on revision 1').waitFor()
      await expect
        .poll(() => handle(page, name).getAttribute('aria-valuetext'))
        .toBe('6.4\u00a0m along, 3.9\u00a0m across')
      await undo(page).click()
      await page.getByText('Revision 1, saved.').waitFor()
      await expect
        .poll(() => handle(page, name).getAttribute('aria-valuetext'))
        .toBe('5.4\u00a0m along, 4.4\u00a0m across')
      await expect.poll(() => undo(page).isDisabled()).toBe(true)
      await page.keyboard.press('Control+Shift+Z')
      await page.waitForFunction(
        () => document.querySelector('[data-handle="goals/1/spots/1"]')?.getAttribute('aria-valuenow') === '6.4',
      )
      await undo(page).click()
      await asSaved(page)
    })

    test('a zone is filled with spots in one step', async () => {
      await page.getByRole('button', { name: 'Draw a zone' }).click()
      await page.getByLabel('Spots of').selectOption({ label: 'Lightship' })
      await page.getByLabel('Corner 1, along').fill('6')
      await page.getByLabel('Corner 1, across').fill('6.5')
      await page.getByLabel('Corner 3, along').fill('8')
      await page.getByLabel('Corner 3, across').fill('7.5')
      await page.getByLabel('Apart, across').fill('1')
      await page.getByLabel('Leave out where this robot can not stand').uncheck()
      await page.getByText('10 spots.').waitFor()
      await page.getByRole('button', { name: 'Fill it' }).click()
      await page.getByText('Lightship has 10 spots now.').waitFor()
      await handle(page, 'Lightship (G3), spot 10').waitFor()
      await undo(page).click()
      await handle(page, 'Lightship (G3)').waitFor()
      await asSaved(page)
    })

    test('what is removed is said with what named it, and undo brings it back', async () => {
      await page.getByText('Goal: Gantry').click()
      await page.getByRole('button', { name: 'Remove ‘Gantry’' }).click()
      await page
        .getByText('‘Gantry’ is removed, also from what named it: String of moorings, Harbour moored.')
        .waitFor()
      await expect.poll(() => page.getByText('Goal: Gantry').count()).toBe(0)
      await undo(page).click()
      await page.getByText('Goal: Gantry').waitFor()
      await asSaved(page)
    })

    test('a text that is no game is answered with places and sentences, and stays as it was typed', async () => {
      await page.getByText('The whole game as text').click()
      const text = page.getByLabel('Game, JSON')
      const apply = page.getByRole('button', { name: 'Take it over' })
      const good = JSON.parse(await text.inputValue()) as Game
      await text.fill('{"format": 1,\n"id": "breakwater",}')
      await apply.click()
      await page.getByText('This is not JSON, in line 2, column 20.').waitFor()
      const { sources: _, ...without } = good
      const wrong = JSON.stringify({ ...without, clock: { ...good.clock, teleop: -5 } })
      await text.fill(wrong)
      await apply.click()
      await page.getByText('clock › teleop: teleop must be at least 0, got −5').waitFor()
      await page.getByText('sources: sources is missing').waitFor()
      await expect.poll(() => text.inputValue()).toBe(wrong)
      await page.getByText('Revision 1, saved.').waitFor()
      await text.fill(JSON.stringify({ ...good, name: 'Breakwater, changed', sets: [] }))
      await apply.click()
      await page.getByRole('heading', { name: 'Breakwater, changed', level: 1 }).waitFor()
      await undo(page).click()
      await page.getByRole('heading', { name: 'Breakwater', level: 1, exact: true }).waitFor()
      await asSaved(page)
      const schema = await page.request.get(`${world.url}/api/schemas/game.json`)
      expect((await schema.json()).$schema).toContain('2020-12')
    })
  })

  test('a spot is dragged by a finger on a phone', async () => {
    const page = await world.open('/games/breakwater', { viewport: { width: 390, height: 844 }, hasTouch: true })
    await handle(page, 'Lightship (G3)').scrollIntoViewIfNeeded()
    const [x, y] = await middle(page, 'Lightship (G3)')
    const scale = await metre(page)
    const touch = await page.context().newCDPSession(page)
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points })
    const before = await page.evaluate(() => window.scrollY)
    await send('touchStart', [{ x, y }])
    for (let step = 1; step <= 8; step++)
      await send('touchMove', [{ x: x - step * 0.125 * scale, y: y + step * scale * 0.25 }])
    await send('touchEnd', [])
    await page.getByText('Unsaved edits on revision 1').waitFor()
    // One metre to the left and two down, from 7.6 and 7.3.
    const at = (await handle(page, 'Lightship (G3)').getAttribute('aria-valuetext'))!
    const [along, across] = [...at.matchAll(/[\d.]+/g)].map(Number)
    expect(Math.abs(along! - 6.6)).toBeLessThan(0.35)
    expect(Math.abs(across! - 5.3)).toBeLessThan(0.35)
    expect(await page.evaluate(() => window.scrollY)).toBe(before)
    await page.context().close()
  })

  test.runIf(inLongForm)(
    'a corner takes its image on the other half along, and a corner is added and removed',
    async () => {
      const page = await world.open('/games/breakwater')
      await page.getByLabel('On the field', { exact: true }).selectOption({ label: 'Obstacle Home dolphin' })
      await handle(page, 'Home dolphin, corner 1').focus()
      await page.keyboard.press('ArrowLeft')
      await readout(page).getByText('Home dolphin, corner 1: 5.1 m along, 6.3 m across').waitFor()
      await page.getByLabel('Corner 1, across').fill('6.25')
      await page.getByRole('button', { name: 'Add a corner after corner 2 of Home dolphin' }).press('Enter')
      await page.waitForFunction(() => document.activeElement?.getAttribute('aria-label') === 'Home dolphin, corner 3')
      await page.getByText('The field fits together').waitFor()
      await page.getByLabel('On the field', { exact: true }).selectOption({ label: 'Obstacle Far dolphin' })
      await expect
        .poll(() => handle(page, 'Far dolphin, corner 1').getAttribute('aria-valuetext'))
        .toBe('11.5\u00a0m along, 6.25\u00a0m across')
      await expect.poll(() => page.getByLabel(/^Corner \d, along$/).count()).toBe(5)
      await handle(page, 'Far dolphin, corner 3').press('Delete')
      await page.waitForFunction(() => document.querySelectorAll('.corner-list li').length === 4)
      await page.context().close()
    },
  )

  test('the way between two points is drawn with length and time, and a spot that can not be reached is said on the field', async () => {
    const page = await world.open('/games/breakwater')
    await page.getByLabel('From', { exact: true }).selectOption({ label: 'Start Middle quay' })
    await page.getByLabel('To', { exact: true }).selectOption({ label: 'Gantry (G2), spot 1' })
    await page.getByTestId('route').getByText('from rest to rest').waitFor()
    // The server computes the same way for the same robot: a stored design.
    const design = await page.request.get(`${world.url}/api/documents/design/shearwater`).then((found) => found.json())
    const asked = { game: await stored('breakwater'), robot: design.body.robot, from: 'quay-middle', to: 'gantry.foot' }
    const way = await page.request
      .post(`${world.url}/api/compute/travel`, { data: asked })
      .then((found) => found.json())
    await page.getByLabel('Size and drive of').selectOption({ label: 'Shearwater' })
    const said = `${Number(way.length.toFixed(2))}\u00a0m, ${way.seconds.toFixed(1)}\u00a0s from rest to rest`
    await page.getByTestId('route').getByText(said).waitFor()
    await page.getByTestId('route').getByRole('button').click()
    const opened = page.getByRole('dialog', { name: 'How this came about' })
    await opened.getByText('The robot is the design Shearwater, revision 1.', { exact: false }).waitFor()
    await page.keyboard.press('Escape')
    await page.getByLabel('Size and drive of').selectOption({ label: 'numbers typed here' })
    await handle(page, 'Gantry (G2), spot 1').focus()
    for (let press = 0; press < 3; press++) await page.keyboard.press('ArrowLeft')
    await page
      .getByText(/too near the obstacle 'Legs of the home gantry'/)
      .first()
      .waitFor()
    await page.getByText('One thing does not fit:').waitFor()
    await expect.poll(() => handle(page, 'Gantry (G2), spot 1').getAttribute('aria-invalid')).toBe('true')
    await page.getByTestId('route').getByText('There is no way').waitFor()
    // A smaller robot gets there.
    await page.getByLabel('Length with bumpers').fill('20 in')
    await page.getByText('The field fits together').waitFor()
    await page.getByTestId('route').getByText('from rest to rest').waitFor()
    await page.context().close()
  })
})

test.runIf(inLongForm)('units are switched everywhere and kept, and no value changes by it', async () => {
  const page = await world.open('/games/breakwater')
  const length = page.getByLabel('Field length')
  await expect.poll(() => length.inputValue()).toBe('16.6')
  await chooseUnits(page, 'inchPound')
  // 16.6 m / 0.0254 and 56 kg / 0.45359237.
  await expect.poll(() => length.inputValue()).toBe('653.54')
  await expect.poll(() => page.getByLabel('Mass at most').inputValue()).toBe('123.46')
  await length.focus()
  await page.keyboard.press('Tab')
  await page.getByText('Revision 1, saved.').waitFor()
  await page.getByLabel('Clearance to obstacles').fill('2')
  await page.getByLabel('Field width').fill('26 ft 10 in')
  await page.reload()
  await page.getByRole('button', { name: 'Settings and help' }).click()
  await expect.poll(() => page.getByLabel('Units').inputValue()).toBe('inchPound')
  await page.keyboard.press('Escape')
  await chooseUnits(page, 'metric')
  await expect.poll(() => length.inputValue()).toBe('16.6')
  await expect.poll(() => page.getByLabel('Clearance to obstacles').inputValue()).toBe('0.0508')
  await expect.poll(() => page.getByLabel('Field width').inputValue()).toBe('8.1788')
  await page.getByLabel('Field width').fill('8 lb')
  await page.getByText('‘8 lb’ is not a length; write it like 0.9 m, 36 in or 3 ft 2 in.').waitFor()
  await page.context().close()
})

test.runIf(inLongForm)(
  'with everything open it has no finding of the scan, in the long form in dark and high contrast too',
  async () => {
    const page = await world.open('/games/breakwater')
    await page.getByRole('heading', { name: 'The places' }).waitFor()
    await page.getByLabel('On the field', { exact: true }).selectOption({ label: 'Obstacle Sand bar' })
    await page.getByRole('button', { name: 'Draw a zone' }).click()
    await page.getByLabel('Shape').selectOption('polygon')
    await page.getByLabel('Show how near this robot gets').check()
    for (const summary of await page.locator('details.fold > summary').all()) await summary.click()
    await page.getByLabel('Game, JSON').waitFor()
    expect(await findingsIn(page, inLongForm ? modes : modes.slice(0, 1))).toEqual([])
    await expect.poll(() => page.getByText(/^Loading .* …$/).allTextContents()).toEqual([])
    await page.context().close()
  },
)

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
