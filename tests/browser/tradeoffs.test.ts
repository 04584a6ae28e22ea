import { afterAll, beforeAll, expect, test } from 'vitest'
import { findingsIn, modes } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { cutTexts, wider } from './screens.ts'
import { path, section, slow, turnsKnown, unfold } from './tradeoffScreen.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

test.runIf(inLongForm)(
  'days less practice are an unknown like others: told in days, broken even on in days, and undone',
  async () => {
    const page = await world.open(path)
    const unknowns = section(page, 'The unknowns')
    await unknowns.getByText('Days less practice').click()
    await unknowns.getByLabel('Who practises less').selectOption({ label: 'Kittiwake, finish when it pays' })
    await unknowns.getByLabel('A day is worth').fill('1.5')
    await unknowns.getByLabel('Likely').last().fill('30')
    await unknowns.getByRole('button', { name: 'Add it' }).last().click()
    await unknowns.getByText('Write low, likely and high in this order.').waitFor()
    await unknowns.getByLabel('Likely').last().fill('3')
    await unknowns.getByRole('button', { name: 'Add it' }).last().click()
    const added = unknowns.getByRole('group', { name: 'Kittiwake: days less practice (pace)' })
    await expect.poll(() => added.getByLabel('Likely').inputValue()).toBe('3')
    await added.getByLabel('High').fill('12')
    const turning = section(page, 'What would turn it')
    await turning.getByLabel('Unknown').selectOption({ label: 'Kittiwake: days less practice (pace)' })
    // The sentence that the issue asks for: as long as it is less than so many days.
    await turning
      .getByText(
        /‘Kittiwake, finish when it pays’ pays as long as .* is less than \d+(\.\d)?.days? less; you believe 0/,
      )
      .waitFor(slow)
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => added.getByLabel('High').inputValue()).toBe('10')
    await page.getByRole('button', { name: 'Undo' }).click()
    await added.waitFor({ state: 'detached' })
    await page.context().close()
  },
)

test.runIf(inLongForm)('what does not matter stands first, and what turns the answer alone after it', async () => {
  const page = await world.open(path, { viewport: { width: 1280, height: 500 } })
  const matter = section(page, 'Which arguments matter')
  await page.getByText('Computed in your browser from the documents as they stand here.').waitFor(slow)
  await page.waitForTimeout(500)
  // It begins when it is seen, can be stopped, and keeps what it had by then.
  await matter.getByText(/^Looking for what does not matter: 0 of/).waitFor()
  await matter.scrollIntoViewIfNeeded()
  await matter.getByText(/^Looking for what does not matter: [1-9]/).waitFor(slow)
  const numbers = async () =>
    (
      await matter
        .getByText(/\d+ of \d+ unknowns/)
        .filter({ visible: true })
        .innerText()
    )
      .match(/\d+/g)!
      .map(Number)
  const [before] = await numbers()
  await matter.getByRole('button', { name: 'Stop looking' }).click()
  await matter.getByText(/^Stopped: \d+ of \d+ unknowns are looked at/).waitFor()
  await page.waitForTimeout(2500)
  const [some, all] = await numbers()
  // Up to three were on their way, and one more may have come between reading and clicking.
  expect(some! - before!).toBeLessThanOrEqual(4)
  expect(some).toBeLessThan(all!)
  await matter.getByRole('button', { name: 'Go on' }).click()
  await turnsKnown(page)
  const headings = await matter.getByRole('heading', { level: 3 }).allTextContents()
  expect(headings).toEqual(['These arguments do not matter', 'These turn the answer alone'])
  const lists = await matter.getByRole('list').allTextContents()
  expect(lists[0]).toContain('‘Latch time’, anywhere from')
  expect(lists[1]).toContain('‘Hang success’')
  expect(lists[0]).not.toContain('‘Hang success’')

  // The list of the parts leads on, says where one is, opens what is folded, and does not cover what it leads to.
  const list = page.getByRole('navigation', { name: 'Parts of this trade-off' })
  const names = [
    'Answer',
    'What counts',
    'Match to match',
    'Arguments',
    'What turns it',
    'Two unknowns',
    'Belief',
    'The call',
  ]
  await expect
    .poll(() => list.getByRole('link').allTextContents())
    .toEqual([...names, 'One more piece', 'The unknowns', 'Own numbers', 'Write it down'])
  const piece = section(page, 'Worth of one more piece, against time left')
  await expect.poll(() => piece.getByLabel('Where').isVisible()).toBe(false)
  await list.getByRole('link', { name: 'One more piece' }).focus()
  await page.keyboard.press('Enter')
  await piece.getByLabel('Where').waitFor()
  await list.getByRole('link', { name: 'One more piece', exact: true }).and(page.locator('[aria-current]')).waitFor()
  const [bar, head] = await Promise.all([list.boundingBox(), piece.getByRole('heading').first().boundingBox()])
  expect(head!.y).toBeGreaterThanOrEqual(bar!.y + bar!.height)
  expect(head!.y).toBeLessThan(bar!.y + bar!.height + 60)
  // On paper what answers is open. The list is not there, nor are own numbers while nobody has set one.
  const leave = page
    .getByRole('heading', { name: /^Leave by, from each place: / })
    .or(page.getByText(/^Leave by, from each place: /))
    .first()
  const own = page.getByRole('heading', { name: 'Own numbers' })
  expect([await leave.isVisible(), await own.isVisible()]).toEqual([false, true])
  await page.emulateMedia({ media: 'print' })
  await expect.poll(() => leave.isVisible()).toBe(true)
  expect(await own.isVisible()).toBe(false)
  await expect.poll(() => list.isVisible()).toBe(false)
  await page.context().close()
})

test('the chance to reach points follows the number typed, a wrong one is answered beside it, and any number can be broken even on', async () => {
  const page = await world.open(path)
  const matches = section(page, 'Match to match')
  const field = matches.getByLabel('Points to reach')
  await field.fill('0')
  await matches
    .getByText('100 % of matches reach 0 points')
    .or(matches.getByText(/over 99.% of matches reach 0 points/))
    .first()
    .waitFor(slow)
  await field.fill('many')
  await matches.getByText('‘many’ is not a number').waitFor()
  await expect.poll(() => field.inputValue()).toBe('many')
  await unfold(page, 'One match against another')
  await matches.getByText(/In \d+ of 20 matches ‘Kittiwake, .*’ scores less than ‘Shearwater, /).waitFor(slow)

  // Any number of the robots, without changing the trade-off.
  const turning = section(page, 'What would turn it')
  await turning.getByLabel('Unknown').selectOption({ label: 'Shearwater: success at Dry dock' })
  await turning.getByText('This number is no unknown of the trade-off yet').waitFor()
  await turning.getByText(/‘Shearwater: success at Dry dock’ anywhere between|comes to/).waitFor(slow)
  await expect.poll(() => page.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(true)
  await page.context().close()
})

test.runIf(inLongForm)('the map grows, keeps what it had when it is stopped, and is read by keyboard', async () => {
  const page = await world.open(path)
  const map = section(page, 'Two unknowns at once')
  await unfold(page, 'Two unknowns at once')
  await map.getByRole('button', { name: 'Draw the map' }).click()
  await map.getByText('5 × 5 values').waitFor(slow)
  await map.getByRole('button', { name: 'Stop' }).click()
  await map.getByText('Stopped. Shown is what was there by then.').waitFor()
  const slider = map.getByRole('slider', { name: 'Read at: Hang success' })
  const sentence = map.getByText(/^Hang success 97.%, .*‘Shearwater, finish when it pays’ leads by \d/)
  await slider.focus()
  await page.keyboard.press('End')
  await sentence.waitFor(slow)
  await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(/^97.%$/)
  await page.keyboard.press('Home')
  await map.getByText(/^Hang success 35.%, .*‘Kittiwake, finish when it pays’ leads by \d\.\d points\.$/).waitFor(slow)
  await map.getByText('Numbers as a table').click()
  const rows = map.getByRole('table').getByRole('row')
  await expect.poll(() => rows.count()).toBeGreaterThan(4)
  await expect.poll(() => rows.nth(1).textContent()).toMatch(/B \+\d\.\d.*A \+\d\.\d|B \+\d/)
  await page.context().close()
})

test.runIf(inLongForm)(
  'ranking points and points disagree about the hook: played, judged otherwise, and written down',
  async () => {
    const page = await world.open('/trade-offs/hook-for-the-standings')
    const played = section(page, 'Answer by whole matches')
    await played
      .getByText(/^Points and ranking points disagree: by points ‘Kittiwake, .*by ranking points ‘Shearwater, /)
      .waitFor(slow)
    await played.getByText(/^ ?It earns ‘All berthed’ in \d+.% of its matches, the other in 0.%/).waitFor()
    await played.locator('.answer').getByRole('button').click()
    await page.getByRole('dialog').getByText('Bonus ‘All berthed’').waitFor()
    await page.keyboard.press('Escape')

    // By wins points and matches agree; the same matches say so, and judging otherwise can be undone.
    const counts = section(page, 'What counts')
    await counts.getByLabel('Judge by').selectOption('win')
    await played.getByText(/^By wins: Kittiwake, finish when it pays, \+\d/).waitFor()
    await played.getByText(/^ ?By points ‘Kittiwake, finish when it pays’ is ahead, too/).waitFor()
    await page.getByRole('button', { name: 'Undo' }).click()
    await played.getByText(/^By ranking points: Shearwater, /).waitFor()
    if (inLongForm) {
      expect(await findingsIn(page, modes)).toEqual([])
      await page.setViewportSize({ width: 360, height: 800 })
      await expect.poll(() => wider(page)).toBe(0)
      expect(await cutTexts(page)).toEqual([])
    }

    const decide = section(page, 'Write it down')
    await decide.getByLabel('Decision').fill('Build the hook')
    const write = decide.getByRole('button', { name: 'Make a decision record' })
    await expect.poll(() => write.isEnabled(), slow).toBe(true)
    await write.click()
    const record = page.getByRole('article')
    await record.getByText('Judged by: Ranking points.').waitFor(slow)
    await record.getByText(/^By ranking points: Shearwater, .* Points and ranking points disagree/).waitFor()
    const stored = await fetch(`${world.url}/api/documents/decision/${page.url().split('/').at(-1)}`).then((r) =>
      r.json(),
    )
    expect(stored.body.chosen).toBe('shearwater-best')
    expect(stored.body.snapshot.objective).toBe('rankingPoints')
    expect(stored.body.snapshot.field.opponents.length).toBe(3)
    // A record is made of all the matches, as soon as they are played.
    expect(stored.body.snapshot.result.field.replicates).toBe(20_000)
    await page.context().close()
  },
)

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
