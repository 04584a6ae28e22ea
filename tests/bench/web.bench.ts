import type { Page } from '@playwright/test'
import { firstScripts } from '../browser/firstScripts.ts'
import { bar, openWorld, type World } from '../browser/world.ts'
import type { BenchEntry } from './entry.ts'
import { median } from './measure.ts'
import { picksWorld, reordering } from './picksPage.ts'

/** Waits until a design has been computed to its end, as it is when somebody has looked at it for a while. */
async function settled(page: Page): Promise<void> {
  await page.locator('[data-testid="points"][data-settled="true"]').waitFor()
  await page.getByText('The one call').waitFor()
}

/**
 * Median time from ten key presses on a bar of the cycle strip to new points on the screen (ms): `soon` while the page that has
 * just been opened still computes, otherwise after that.
 */
async function editToPoints({ open }: World, soon: boolean): Promise<number> {
  const page = await open('/designs/shearwater')
  await page.getByRole('button', { name: 'Score', exact: true }).click()
  await page.getByRole('slider', { name: 'Raise the arm, seconds' }).waitFor()
  if (!soon) await settled(page)
  await bar(page, 'Raise the arm').focus()
  for (let press = 0; press < 10; press++) {
    await page.keyboard.press('ArrowRight')
    await page.waitForFunction((count) => performance.getEntriesByName('edit-to-points').length >= count, press + 1)
  }
  const times = await page.evaluate(() =>
    performance.getEntriesByName('edit-to-points').map(({ duration }) => duration),
  )
  await page.context().close()
  return median(times)
}

const edit = (name: string, soon: boolean): BenchEntry => ({
  name,
  unit: 'ms',
  better: 'lower',
  open: async () => {
    const world = await openWorld()
    return { run: () => editToPoints(world, soon), close: () => world.close() }
  },
})

/** The slowest picture of the trade-off screen, from its data to the frame that paints it (ms); see web/charts/useDrawn.ts. */
async function slowestPicture({ open }: World): Promise<number> {
  const page = await open('/trade-offs/hook-or-practice')
  const drawn = ['swing', 'chances', 'knowing', 'dots', 'difference', 'break-even', 'leave-by', 'piece']
  await page.waitForFunction(
    (names) => names.every((name) => performance.getEntriesByName(`drawn:${name}`).length > 0),
    drawn,
    { timeout: 180_000 },
  )
  const times = await page.evaluate(() =>
    performance
      .getEntriesByType('measure')
      .flatMap(({ name, duration }) => (name.startsWith('drawn:') ? [duration] : [])),
  )
  await page.context().close()
  return Math.max(...times)
}

/** Screens of the demo with pictures, and which of these are waited for. */
const elsewhere: readonly { path: string; drawn: readonly string[] }[] = [
  { path: '/', drawn: ['start'] },
  { path: '/games/breakwater', drawn: ['field'] },
  { path: '/designs/shearwater', drawn: ['strip', 'policy'] },
  { path: '/designs/kittiwake', drawn: ['air'] },
  { path: '/match/breakwater', drawn: ['outcomes', 'scores', 'margin', 'waiting', 'replay'] },
  { path: '/event/breakwater-spring/estimates?team=90001', drawn: ['trend'] },
  { path: '/event/breakwater-spring/estimates?match=qualification-30', drawn: ['forecast'] },
  { path: '/event/breakwater-spring/field', drawn: ['trips', 'legs', 'practice'] },
  { path: '/event/breakwater-spring/forecasts', drawn: ['calibration', 'pit'] },
  { path: '/event/breakwater-spring/briefing?match=qualification-30&side=red', drawn: ['lanes', 'lead'] },
]

/** The slowest picture of all other screens, as above; says on the error stream how long each took. */
async function slowestElsewhere({ open }: World): Promise<number> {
  const longest = new Map<string, number>()
  for (const { path, drawn } of elsewhere) {
    const page = await open(path)
    await page.waitForFunction(
      (names) => names.every((name) => performance.getEntriesByName(`drawn:${name}`).length > 0),
      drawn,
      { timeout: 180_000 },
    )
    const measured = await page.evaluate(() =>
      performance.getEntriesByType('measure').map(({ name, duration }) => ({ name, duration })),
    )
    for (const { name, duration } of measured.filter((one) => one.name.startsWith('drawn:')))
      longest.set(name.slice(6), Math.max(longest.get(name.slice(6)) ?? 0, duration))
    await page.context().close()
  }
  console.error([...longest].map(([name, duration]) => `${name} ${duration.toFixed(0)}`).join(', '))
  return Math.max(...longest.values())
}

const entries: BenchEntry[] = [
  edit('web.edit', false),
  edit('web.editsoon', true),
  {
    name: 'web.pictures',
    unit: 'ms',
    better: 'lower',
    open: async () => {
      const world = await openWorld()
      return { run: () => slowestPicture(world), close: () => world.close() }
    },
  },
  {
    name: 'web.charts',
    unit: 'ms',
    better: 'lower',
    open: async () => {
      const world = await openWorld()
      return { run: () => slowestElsewhere(world), close: () => world.close() }
    },
  },
  {
    // From a page's address to the first, rough order of 60 teams that are kept in this browser, painted.
    name: 'web.picksfirst',
    unit: 'ms',
    better: 'lower',
    open: async () => {
      const { opened, close } = await picksWorld()
      return { run: () => opened('rough-order'), close }
    },
  },
  {
    // And to the one of all matches and draws.
    name: 'web.picks',
    unit: 'ms',
    better: 'lower',
    open: async () => {
      const { opened, close } = await picksWorld()
      return { run: () => opened('pick-order'), close }
    },
  },
  {
    // From a press on a name that was called out to the order that follows, painted.
    name: 'web.reorder',
    unit: 'ms',
    better: 'lower',
    runs: 9,
    open: reordering,
  },
  {
    name: 'web.first',
    unit: 'kB compressed',
    better: 'lower',
    open: async () => {
      const world = await openWorld()
      return { run: () => firstScripts(world), close: () => world.close() }
    },
  },
  {
    name: 'web.stands',
    unit: 'kB compressed',
    better: 'lower',
    open: async () => {
      const world = await openWorld()
      return { run: () => firstScripts(world, 'en-US', '/stands/'), close: () => world.close() }
    },
  },
]

export default entries
