import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ownTeam } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { cutTexts, settled, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

const { event, records } = seededEvent()
const address = `/event/${event.id}/estimates`
let world: World

beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

// Before the next one, which adds a record to a match that is opened here.
test.runIf(inLongForm)(
  'teams stand side by side, their numbers open down to the records, older matches may count less',
  async () => {
    const page = await world.open(address)
    const table = page.getByRole('region', { name: 'What the field says: table' })
    // A lead lets older matches count less, and takes it back.
    await page.getByText('How soon are matches forgotten?').click()
    await page.getByRole('radio', { name: '4 own matches' }).check()
    await page.getByRole('button', { name: 'Let it count' }).click()
    await page.getByText(/After 4 own matches a match counts half\.$/).waitFor()
    await page.getByRole('button', { name: 'Take back' }).click()
    await page.getByText(/All own matches count alike, except those before a change of the robot\.$/).waitFor()

    // Teams that are ticked stand side by side, at an address that says which.
    for (const team of ['90001', '90020'])
      await table.getByRole('checkbox', { name: `Set team ${team} side by side` }).check()
    await page.getByRole('link', { name: '2 teams side by side' }).click()
    const attempts = page.getByRole('region', { name: 'Pieces tried: teams with their intervals, the best first' })
    await attempts.getByText(/^chance to be better than 900(01|20): \d\d.%$/).waitFor()
    await page.getByLabel('Add a team').selectOption('90003')
    await expect.poll(() => attempts.getByRole('listitem').count()).toBe(3)
    await page
      .getByRole('img', { name: /^90003, Qualification/ })
      .first()
      .waitFor()
    expect(new URL(page.url()).search).toBe('?teams=90001,90020,90003')
    expect(await findings(page)).toEqual([])
    await page.getByRole('link', { name: 'All teams' }).click()

    await table.getByRole('link', { name: '90004' }).click()
    // What is solved opens to the official totals, a number of records down to the records.
    await page
      .getByRole('row', { name: /^Solved from/ })
      .getByRole('button')
      .nth(1)
      .click()
    await page
      .getByRole('dialog')
      .getByRole('row', { name: /^Qualification 3 / })
      .waitFor()
    await page.keyboard.press('Escape')
    const numbers = page.getByRole('region', { name: 'Numbers with how far to trust them' })
    await numbers
      .getByRole('row', { name: /^Points of goals in teleop/ })
      .getByRole('button')
      .click()
    const panel = page.getByRole('dialog', { name: 'How this came about' })
    await panel.getByRole('button', { name: 'Pieces at Piers' }).click()
    await panel.getByRole('button', { name: 'Pieces tried' }).click()
    await panel.getByRole('row', { name: /^Own matches \d+\.\d \d\d.%$/ }).waitFor()
    await panel.getByRole('button', { name: 'Qualification 3: Look at the record' }).click()
    await page
      .getByRole('dialog', { name: 'Qualification 3' })
      .getByText(/^Tove, on the server/)
      .waitFor()
    expect(await findings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await panel.waitFor({ state: 'detached' })

    await page.getByRole('link', { name: 'Doubts' }).click()
    // And what would be said without it.
    await page.getByRole('button', { name: 'What would be said without the record' }).first().click()
    await page.getByRole('region', { name: 'Team 90023: from 4 own matches with, from 3 without' }).waitFor()
    await page.getByRole('rowheader', { name: 'Qualification 24, Red: chance to win' }).waitFor()
    expect(await findings(page)).toEqual([])
    expect(world.errors).toEqual([])
  },
)

test('all teams stand beside each other, one opens with its matches, and a record that arrives changes it', async () => {
  const page = await world.open(address)
  const table = page.getByRole('region', { name: 'What the field says: table' })
  await table.getByRole('row').nth(25).waitFor()
  const meanOf = async (row: number, column: number) =>
    Number.parseFloat((await table.getByRole('row').nth(row).locator('th, td').nth(column).textContent()) ?? '')
  expect(await meanOf(1, 2)).toBeGreaterThan(await meanOf(25, 2))
  await table.getByRole('button', { name: 'Seconds a trip' }).click()
  await table.locator('th[aria-sort="ascending"]', { hasText: 'Seconds a trip' }).waitFor()
  expect(await meanOf(1, 4)).toBeLessThan(await meanOf(25, 4))
  expect(await findings(page)).toEqual([])

  await table.getByRole('link', { name: '90004' }).click()
  await page.getByRole('heading', { name: 'Team 90004, Salt and Solder' }).waitFor()
  const seen = records.filter(({ kind, body }) => kind === 'observation' && 'team' in body && body.team === '90004')
  expect(await page.locator('.strips li').count()).toBe(seen.length)
  await page.getByRole('rowheader', { name: /^Solved from \d+ official totals$/ }).waitFor()
  // A strip says in words what it shows.
  expect(await page.getByRole('img', { name: /^Qualification 3 from left to right: 5 Piers/ }).count()).toBe(1)
  expect(await findings(page)).toEqual([])

  const first = seen[0]!
  const id = '0195b2a0-0000-7000-8000-00000000cafe'
  const own = { id, device: 'phone-nils', sequence: 1, scout: '0195b2a0-0000-7000-8000-00000000beef' }
  const row = { ...first, ...own, body: { ...first.body, ...own } }
  const sent = await fetch(`${world.url}/api/records`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ device: own.device, unsent: 0, rows: [row] }),
  })
  expect(await sent.json()).toMatchObject({ answers: [{ outcome: 'held' }] })
  // An id that belongs to nobody here is not shown as a name.
  await page.getByText('and somebody not known here (beef)').waitFor()

  await page.getByRole('link', { name: 'All teams' }).click()
  await page.getByRole('link', { name: 'Qualification 24' }).click()
  await page.getByText(/^(Red|Blue) wins with \d\d.% \(± 1.%\)\.$/).waitFor()
  await page.getByText(/^Kept \d+ \w+ \d{4}, \d\d:\d\d, before the match\.$/).waitFor()
  expect(await findings(page)).toEqual([])

  // What is doubted stands in a queue of its own, with the record one press away.
  await page.getByRole('link', { name: 'Doubts' }).click()
  await page.getByText('fits the official result once Piers and Gantry are taken for each other').waitFor()
  await page.getByRole('button', { name: 'Look at the record' }).first().click()
  await page.getByRole('dialog').getByText('Tove').first().waitFor()
  await page.keyboard.press('Escape')
  expect(world.errors).toEqual([])
})

test.runIf(inLongForm)(
  'a design is put against its robot’s practice, written back into a copy, and the decision computed again with it',
  async () => {
    const page = await world.open(`/event/${event.id}/field?design=shearwater`)
    await page
      .getByText(
        /^The model says \d+\.\d.s a trip, the field says \d+\.\d.s, with 95 % between \d+\.\d.s and \d+\.\d.s\.$/,
      )
      .waitFor()
    expect(await page.getByLabel('Robot on the field').inputValue()).toBe(ownTeam)
    await page.getByLabel('Runs', { exact: true }).selectOption('practice')
    await page.getByText(/^From \d+ trips of 10 runs\.$/).waitFor()
    await page.getByText(/^\d\.\d.s of the \d\.\d.s are in collecting\.$/).waitFor()
    for (const driver of ['A Pia', 'B Sven']) await page.getByRole('rowheader', { name: driver }).waitFor()
    expect(await findings(page)).toEqual([])

    // By keyboard: the stage that takes the difference, and what it does to the points.
    await page.getByRole('combobox', { name: /^Collect from Channel slipway/ }).selectOption({ index: 2 })
    const points = page.getByText(/^Expected points of a match: /)
    await points.waitFor()
    const [before, after] = [...((await points.textContent()) ?? '').matchAll(/\d+\.\d/g)].map(Number)
    expect(after).toBeLessThan(before!)
    await page.getByLabel('Name of the copy').fill('')
    await page.getByRole('button', { name: 'Keep the copy' }).press('Enter')
    await page.getByText('Please give the copy a name.').waitFor()
    await page.getByLabel('Name of the copy').fill('Shearwater, timed')
    await page.getByRole('button', { name: 'Keep the copy' }).press('Enter')
    const copy = await page.getByRole('link', { name: 'Shearwater, timed' }).getAttribute('href')
    const stored = await (await fetch(`${world.url}/api/documents/design/${copy!.split('/').at(-1)}`)).json()
    expect(stored.body.fromField).toMatchObject({
      design: { id: 'shearwater', revision: 1 },
      team: ownTeam,
      matches: 0,
      practice: 10,
    })
    expect(stored.body.fromField.shifts).toMatchObject([
      { leg: { kind: 'collect', source: 'channel' }, stage: 'chase' },
    ])

    await page.getByRole('link', { name: 'Leave the hook out for now' }).click()
    await page.getByText('Would we decide the same today? Shearwater, timed stands in for Shearwater:').waitFor()
    await page.getByText(/^The decision (stands|flips): /).waitFor()
    await page.getByRole('rowheader', { name: 'the design ‘Shearwater, timed’' }).waitFor()
    if (inLongForm) expect(await findings(page)).toEqual([])

    // Who drove in a match is noted by a lead, goes into the table by driver, and is taken back again.
    await page.goto(`${world.url}/event/${event.id}/field?design=shearwater`)
    await page.getByText('Who drove in matches?').click()
    const drove = page.getByLabel('Qualification 9', { exact: true })
    const table = page.getByRole('region', { name: 'By driver, from run to run' })
    const runsOfPia = async () =>
      Number(await table.getByRole('row', { name: 'Pia' }).getByRole('cell').first().innerText())
    const runs = await runsOfPia()
    await drove.fill(' Pia ')
    await page.getByRole('button', { name: 'Keep it', exact: true }).press('Enter')
    await expect.poll(runsOfPia).toBe(runs + 1)
    await page.getByText('Kept.').waitFor()
    await page.getByRole('button', { name: 'Undo', exact: true }).press('Enter')
    await expect.poll(runsOfPia).toBe(runs)
    expect(await drove.inputValue()).toBe('')

    // The robot as it was decided on, whatever became of the design.
    await page
      .getByLabel('Design', { exact: true })
      .selectOption({ label: 'Shearwater, as in ‘Leave the hook out for now’' })
    await page.getByText('Shearwater as it was when this was decided').waitFor()
    expect(new URL(page.url()).searchParams.get('decision')).toBe('leave-the-hook-out')
    expect(await findings(page)).toEqual([])

    // Of a robot that nobody has timed.
    await page.goto(`${world.url}/event/${event.id}/field?team=12345&design=puffin`)
    await page.getByText('No such run of this robot was timed').waitFor()
    expect(world.errors).toEqual([])
  },
)

test.runIf(inLongForm)(
  'forecasts are told with what came of them, by chances, scores and baselines; more are made in one go and can be stopped',
  async () => {
    const page = await world.open(`/event/${event.id}/forecasts`)
    await page.getByText(/^In \d+ of 20 matches, the side with the greater chance won\.$/).waitFor()
    await page.getByText('Judged are 20 of 23 matches with a result').waitFor()
    expect(
      await page.getByRole('img', { name: /^How often the likelier side won, by its chance: 5\d.%: / }).count(),
    ).toBe(1)
    expect(await page.getByRole('img', { name: /^Scores from the lowest fifth/ }).count()).toBe(1)
    const table = page.getByRole('table', { name: 'Every forecast' })
    await table.getByRole('row', { name: /^Qualification 6 .*played again, counts for nothing/ }).waitFor()
    expect(await findings(page)).toEqual([])

    await page.getByRole('button', { name: 'Forecast the day’s coming matches' }).press('Enter')
    await page.getByText(/^Forecasting: [1-9]\d* of \d+ done\.$/).waitFor()
    await page.getByRole('button', { name: 'Stop' }).press('Enter')
    await page.getByText(/^Stopped; \d+ forecasts were kept\.$/).waitFor()
    await table.getByRole('row', { name: /^Qualification 25 (Red|Blue) \d\d.% no result yet/ }).waitFor()

    // On a phone rows are cards, and nothing is wider than the window.
    await page.setViewportSize({ width: 390, height: 800 })
    await page.getByRole('list', { name: 'Every forecast' }).waitFor()
    expect(await wider(page)).toBe(0)
    expect(await cutTexts(page)).toEqual([])
    await page.getByRole('link', { name: 'Qualification 9', exact: true }).click()
    await page.getByText(/^Before the match \(.*\): Red 67.%\. Red won, 239 : 62$/).waitFor()
    await page.getByText('Red came to 239; forecast were 194.5, 113 to 272 with 80 %.').waitFor()
    expect(world.errors).toEqual([])
  },
)

describe.runIf(inLongForm)('estimates', () => {
  test.each(['en-US', 'de-DE'])('fit 360 px in %s', async (locale) => {
    const page = await world.open(address, { locale, viewport: { width: 360, height: 760 } })
    const found: string[] = []
    for (const at of [
      address,
      `${address}?team=90004`,
      `${address}?match=qualification-24`,
      `${address}?match=qualification-9`,
      `${address}?teams=90001,90020,90003,90004,90005,90006`,
      `/event/${event.id}/doubts`,
      `/event/${event.id}/field`,
      `/event/${event.id}/field?team=12345`,
      `/event/${event.id}/forecasts`,
    ]) {
      await page.goto(world.url + at)
      await settled(page, at.endsWith('/field') ? '.field-check .answer' : '.event-page h2')
      found.push(...(await findings(page)), ...(await cutTexts(page)))
      if ((await wider(page)) > 0) found.push(`${at}: wider than the window`)
    }
    expect(found).toEqual([])
  })
})
