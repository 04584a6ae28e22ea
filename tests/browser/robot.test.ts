import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Robot } from '../../src/model/documents/types.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { slow } from './tradeoffScreen.ts'
import { chooseUnits, openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const robotOf = async (id: string): Promise<Robot> =>
  (await fetch(`${world.url}/api/documents/design/${id}`).then((response) => response.json())).body.robot

test('loads, entries per spot, reliability, fouls, defence and budget are fields with units and checks, and are saved', async () => {
  const page = await world.open('/designs/shearwater')
  await page.getByText('The robot: name, size, drive, form, reliability').click()
  await page.getByLabel('Carries, Buoy').fill('0')
  await page.getByText('At least 1, not 0.').first().waitFor()
  await page.getByLabel('Carries, Buoy').fill('2')
  await page.getByLabel('Preloaded', { exact: true }).fill('3')
  await page.getByText('preload must be at most what the robot carries').first().waitFor()
  await page.getByLabel('Preloaded', { exact: true }).fill('2')
  await page.getByLabel('Minor fouls', { exact: true }).fill('0.4')
  await page.getByLabel('Slows its mark down by').fill('30')
  await page.getByLabel('Stops in the match').fill('7')

  const times = page.getByRole('group', { name: 'Own times between two spots' })
  await times.getByRole('button', { name: 'Add a time' }).click()
  const to = times.getByLabel('and', { exact: true })
  const end = await to.inputValue()
  await to.selectOption(await times.getByLabel('Between').inputValue())
  await times.getByText('A drive ends elsewhere than it begins').waitFor()
  await to.selectOption(end)
  await times.getByLabel('Own time', { exact: true }).fill('2.75')

  await page.getByText('What it can do: places, tries, ways to score per spot').click()
  await page.getByRole('button', { name: 'Add a way to score at Piers' }).click()
  const piers = page.locator('.can-place', { has: page.getByRole('checkbox', { name: 'Piers', exact: true }) })
  await piers.getByLabel('Done from').last().selectOption('some')
  const spots = piers.getByRole('group', { name: 'these spots only' })
  await spots.getByLabel('Piers, spot 1', { exact: true }).uncheck()
  await page.getByRole('checkbox', { name: 'Dry dock', exact: true }).last().uncheck()

  const mass = page.getByLabel('Mass', { exact: true })
  await mass.fill('58')
  const field = page.locator('.mantine-TextInput-root', { has: mass })
  await field.getByText('58 kg is 2 kg over the game’s limit of 56 kg.').waitFor()
  await expect.poll(() => page.getByTestId('budget-mass').locator('.budget-over').count()).toBe(1)
  await mass.blur()
  await chooseUnits(page, 'inchPound')
  await expect.poll(() => mass.inputValue()).toBe('127.87')
  await field.getByText('127.87 lb is 4.41 lb over the game’s limit of 123.46 lb.').waitFor()
  await mass.fill('120 lb')
  await page.getByTestId('budget-mass').getByText('120 lb of 123.46 lb; 3.46 lb left.').waitFor()
  await page.getByRole('textbox', { name: 'Ready by' }).fill('2027-02-12')
  await page.getByText('340 h of work, ready by 12 February 2027.').waitFor()

  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('Saved as revision 2.').waitFor()
  const robot = await robotOf('shearwater')
  expect(robot.carries).toEqual({ buoy: 2 })
  expect(robot.drive.times).toMatchObject([{ to: end, seconds: 2.75 }])
  expect(robot.preload).toEqual({ piece: 'buoy', count: 2 })
  expect(robot.fouls.minorPerMatch).toBe(0.4)
  expect(robot.defence.slowdown).toBe(0.3)
  expect(robot.reliability.stops).toBe(0.07)
  expect(robot.budget).toMatchObject({ readyBy: '2027-02-12', cost: 3950 })
  expect(robot.budget!.mass).toBeCloseTo(120 * 0.45359237, 6)
  expect(robot.score['piers']).toHaveLength(2)
  const chosen = robot.score['piers']![1]!.spots
  expect(chosen).not.toBe('any')
  expect((chosen as string[]).length).toBeGreaterThan(0)
  expect(robot.finish['dry-dock']).toBeUndefined()
  await page.context().close()
})

test.runIf(inLongForm)('a robot that can do nothing says so, and learns it again', async () => {
  const page = await world.open('/designs/puffin')
  await page.getByText('What it can do: places, tries, ways to score per spot').click()
  const places = page.locator('.can-place')
  const boxes = places.locator('> .mantine-Checkbox-root input[type=checkbox]')
  for (const box of await boxes.all()) if (await box.isChecked()) await box.uncheck()
  await page.getByText('has no trip that collects a piece and scores it').waitFor()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await boxes.nth(0).check()
  await page.getByText('8.5 s on average, as one guess').first().waitFor()
  await page.context().close()
})

test.runIf(inLongForm)(
  'a way to play hinders an opponent between two times left, and what does not fit is said beside it',
  async () => {
    const page = await world.open('/designs/puffin')
    await page.getByRole('button', { name: 'Change it' }).click()
    const panel = page.getByRole('dialog', { name: 'Way to play' })
    await panel.getByLabel('It hinders an opponent for part of the match').check()
    await panel.getByLabel('Whom').selectOption({ label: 'their robot in position 3' })
    await panel.getByLabel('From, time left').fill('60')
    await panel.getByLabel('Until, time left').fill('70')
    await panel
      .getByText(/until must be less than from \(60\), got 70/)
      .first()
      .waitFor()
    await panel.getByLabel('Until, time left').fill('30')
    await panel.getByRole('button', { name: 'Save', exact: true }).click()
    await panel.getByText('Saved as revision 2.').waitFor()
    const ways = await fetch(`${world.url}/api/documents/option`).then((response) => response.json())
    const changed = ways.find(({ revision }: { revision: number }) => revision === 2)
    const { body } = await fetch(`${world.url}/api/documents/option/${changed.id}`).then((response) => response.json())
    expect(body.option.role.defend).toEqual({ mark: 2, from: 60, until: 30 })
    await page.context().close()
  },
)

test.runIf(inLongForm)(
  'stored air says when its pressure is lost, what that costs and what a tank more is worth, on a phone too',
  async () => {
    const page = await world.open('/designs/kittiwake', { viewport: { width: 390, height: 844 } })
    const points = await shownPoints(page)
    const panel = page.getByRole('region', { name: 'Stored air' })
    const lost = panel.getByTestId('air-lost')
    await lost.filter({ hasText: /is lost with \d+\.\d.s left \(cautious bound: \d+\.\d.s left\)/ }).waitFor()
    const shown = async (id: string) => Number.parseFloat((await panel.getByTestId(`air-${id}`).textContent())!)
    expect(await shown('always')).toBe(points)
    const cost = (await shown('always')) - (await shown('withThis'))
    expect(cost).toBeGreaterThan(0)
    expect(await page.getByTestId('air-note').textContent()).toMatch(
      /costs 0\.\d points a match that this number does not/,
    )
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)

    await panel.getByRole('button', { name: 'Tanks and pressures' }).click()
    await panel.getByLabel('Tanks', { exact: true }).fill('12')
    await lost.filter({ hasText: 'lasts the match (by the cautious bound too).' }).waitFor()
    await panel.getByText('One tank more is worth nothing here.').waitFor()
    expect(await page.getByTestId('air-note').count()).toBe(0)
    await panel.getByLabel('Once it is lost, strokes with').fill('6 bar')
    await panel.getByText('At most the working pressure of 501.3\u00a0kPa(a), not 600\u00a0kPa(a).').waitFor()
    await panel.getByText('It is computed when nothing is wrong with the design.').waitFor()
    await panel.getByLabel('Once it is lost, strokes with').fill('30 psig')
    await panel.getByLabel('Stored at the start').fill('10 barg')
    await panel.getByRole('alert').filter({ hasText: 'it can burst' }).waitFor()

    await panel.getByRole('button', { name: 'What moves, and how often' }).click()
    const intake = panel.getByRole('group', { name: 'Collect from Outer slipway: Intake, lowered by a cylinder' })
    await intake.getByLabel('Out', { exact: true }).fill('2')
    await panel.getByRole('button', { name: 'Remove the stored air' }).click()
    await page.getByText('The stored air is removed').waitFor()
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    expect(await intake.getByLabel('Out', { exact: true }).inputValue()).toBe('2')
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
    await page.context().close()
  },
)

test.runIf(inLongForm)('a robot without stored air gets some, with a tank of the shelf, and it is saved', async () => {
  const page = await world.open('/designs/puffin')
  await page.getByRole('button', { name: 'Stored air: none' }).click()
  await page.getByRole('button', { name: 'Add stored air' }).click()
  const panel = page.getByRole('region', { name: 'Stored air' })
  await panel.getByText('No mechanism of this robot is moved by air yet.').waitFor()
  await panel.getByTestId('air-lost').filter({ hasText: 'lasts the match' }).waitFor()
  await panel.getByLabel('A compressor runs in the match').check()
  await panel.getByLabel('Starts at', { exact: true }).fill('20 bar')
  await panel.getByText(/At most where it ends/).waitFor()
  await panel.getByLabel('Starts at', { exact: true }).fill('7 bar')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText(/Saved as revision \d+\./).waitFor()
  const { air } = await robotOf('puffin')
  expect(air).toMatchObject({ tank: { id: 'tank-06' }, compressor: { on: 700_000, part: { id: 'compressor-small' } } })
  await page.context().close()
})

test.runIf(inLongForm)('a trade-off says beside its option what stored air costs', async () => {
  const page = await world.open('/trade-offs/hook-or-practice')
  const note = page.getByTestId('air-kittiwake-best')
  // Behind the whole comparison, like what tradeoffScreen.ts waits for.
  await note.filter({ hasText: /Kittiwake.*costs 0\.\d points a match/ }).waitFor(slow)
  await note.getByRole('link', { name: 'See stored air' }).click()
  await page.getByTestId('air-lost').waitFor()
  await page.context().close()
})

test.runIf(inLongForm).each(['light', 'dark'] as const)(
  'with everything open the %s theme has no finding of the scan',
  async (colorScheme) => {
    const page = await world.open('/designs/shearwater', { colorScheme })
    await shownPoints(page)
    await page.getByText('The robot: name, size, drive, form, reliability').click()
    await page.getByText('What it can do: places, tries, ways to score per spot').click()
    await page.getByLabel('Mass', { exact: true }).fill('99')
    await page.getByLabel('Other design', { exact: true }).selectOption({ label: 'Puffin' })
    await page.getByText('Points a match: Shearwater').waitFor()
    expect(await findings(page)).toEqual([])
    await page.context().close()
  },
)

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
