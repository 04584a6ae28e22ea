import type { Page } from '@playwright/test'
import { held, withEvent } from '../browser/harbour.ts'
import { openWorld, type World } from '../browser/world.ts'
import type { BenchEntry } from './entry.ts'

/** Taps of one measurement; their 95th percentile is its value. */
const taps = 120
/** Records that wait when the network comes back. */
const waiting = 40

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' } as const

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' })
const others = (page: Page) => page.getByRole('link', { name: 'Another match or robot' })

/** The stands with a nickname, on a server that belongs to nobody. */
async function openStands(world: World): Promise<Page> {
  const page = await world.open('/stands/?event=harbour', phone)
  await page.getByLabel('What are you called?').fill('Mia')
  await press(page, 'Go on').tap()
  await others(page).waitFor()
  return page
}

/**
 * Time from the finger's press to the end of the transaction that holds the tap (ms), which the browser tells once it is on its
 * disk (`durability: 'strict'`): 95th percentile.
 */
async function tapToDurable(world: World): Promise<number> {
  const page = await openStands(world)
  // Before the page's database is opened: its library takes the function from there.
  await page.addInitScript(() => {
    const times: number[] = []
    Object.assign(globalThis, { times })
    let pressed = 0
    addEventListener('pointerdown', ({ timeStamp }) => {
      pressed = timeStamp
    })
    const { transaction } = IDBDatabase.prototype
    IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...of) {
      const begun = transaction.apply(this, of)
      const from = pressed
      const isTap = begun.mode === 'readwrite' && begun.objectStoreNames.contains('taps')
      if (isTap && begun.durability !== 'strict') throw new Error('a tap is not written to the disk')
      if (isTap) begun.addEventListener('complete', () => times.push(performance.now() - from))
      return begun
    }
  })
  await page.reload()
  await others(page).tap()
  await press(page, /^Blue, position 2/).tap()
  await press(page, 'Go on').tap()
  await press(page, 'Start of the match').tap()
  const buttons = [press(page, /^Collected: Outer/), press(page, 'Scored: Piers')]
  for (let tap = 0; tap < taps; tap++) {
    await buttons[tap % buttons.length]!.tap()
    await page.waitForFunction((count) => (globalThis as unknown as { times: number[] }).times.length >= count, tap + 1)
  }
  const times = await page.evaluate(() => (globalThis as unknown as { times: number[] }).times)
  await page.context().close()
  return times.sort((a, b) => a - b)[Math.ceil(times.length * 0.95) - 1]!
}

/** Time from the return of the network to the page's word that nothing is on this phone only (ms). */
async function queueEmpty(world: World): Promise<number> {
  const page = await openStands(world)
  const before = (await held(world)).length
  const context = page.context()
  await context.setOffline(true)
  await others(page).tap()
  await press(page, /^Blue, position 2/).tap()
  await press(page, 'Go on').tap()
  await press(page, 'It does not come').tap()
  await press(page, 'Right: keep it').tap()
  await page.getByRole('link', { name: '1 on this phone' }).waitFor()
  // As many as a bad day leaves: copies of the one that was made by hand, under ids of their own.
  await page.evaluate(async (count) => {
    const database = await new Promise<IDBDatabase>((resolve) => {
      const asked = indexedDB.open('cyclewright-stands')
      asked.onsuccess = () => resolve(asked.result)
    })
    const store = database.transaction('outbox', 'readwrite').objectStore('outbox')
    const found = await new Promise<IDBRequest['result']>((resolve) => {
      const asked = store.getAll()
      asked.onsuccess = () => resolve(asked.result)
    })
    for (let copy = 1; copy < count; copy++) {
      const [{ row, ...kept }] = found
      const id = crypto.randomUUID()
      const sequence = kept.sequence + copy
      store.put({ ...kept, id, sequence, row: { ...row, id, sequence, body: { ...row.body, id, sequence } } })
    }
    await new Promise((resolve) => {
      store.transaction.oncomplete = resolve
    })
    database.close()
  }, waiting)
  const begin = performance.now()
  await context.setOffline(false)
  await page.getByRole('link', { name: `0 on this phone, 0 need you, ${waiting} on the server` }).waitFor()
  const took = performance.now() - begin
  await context.close()
  const arrived = (await held(world)).length - before
  if (arrived !== waiting) throw new Error(`${arrived} of ${waiting} records arrived`)
  return took
}

const entry = (name: string, measure: (world: World) => Promise<number>): BenchEntry => ({
  name,
  unit: 'ms',
  better: 'lower',
  runs: 5,
  open: async () => {
    const world = await openWorld()
    await withEvent(world)
    return { run: () => measure(world), close: () => world.close() }
  },
})

/** What a phone promises: a tap is on its disk within 50 ms, and the outbox is empty within 10 s of the network's return. */
const entries: BenchEntry[] = [entry('stands.tap', tapToDurable), entry('stands.back', queueEmpty)]

export default entries
