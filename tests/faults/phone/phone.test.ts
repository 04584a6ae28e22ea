import type { Page } from '@playwright/test'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { Observation } from '../../../src/model/scouting/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import type { Trouble } from '../proxy.ts'
import {
  allThereOnce,
  begin,
  everything,
  heldBy,
  link,
  online,
  openScene,
  outboxOf,
  press,
  record,
  type Scene,
  says,
  signIn,
  tap,
  whatOf,
} from './scene.ts'

let scene: Scene
beforeAll(async () => {
  scene = await openScene()
})
afterAll(() => scene.close())

/** How many rows the server has told this phone that it holds: what its status bar has to show. */
let held = 0
beforeEach(async () => {
  const { page } = scene.phone
  scene.proxy.meet('none')
  await page.goto(`${scene.proxy.url}/stands/#/`)
  held = (await outboxOf(page)).filter(({ state }) => state === 'server').length
})

/** One record is made while something is wrong with the way to the server, and goes through when it no longer is. */
async function through(page: Page, trouble: Trouble) {
  const { proxy } = scene
  proxy.meet(trouble)
  await record(page)
  await expect.poll(() => proxy.met, { message: trouble }).toBeGreaterThan(0)
  // Whatever the server has: what it did not say to the phone is on the phone.
  if (trouble !== 'twice') await says(page, 1, held)
  const arrives = trouble === 'replyLost' || trouble === 'cut' || trouble === 'twice'
  await expect.poll(() => heldBy(scene), { message: trouble }).toBe(held + (arrives ? 1 : 0))
  proxy.meet('none')
  // Once it comes back by itself, as after a fault that the phone can not see the end of.
  if (trouble !== 'replyLost') await online(page)
  held++
  await says(page, 0, held)
}

test('Whatever happens on the way, each record arrives once, and until the server says so the phone says that it has it', async () => {
  const { page } = scene.phone
  const troubles: Trouble[] = ['replyLost', 'twice', 'cut', 'portal', 'badGateway', 'gone']
  for (const trouble of inLongForm ? [...troubles, ...troubles.toReversed()] : troubles) await through(page, trouble)
  await allThereOnce(scene, page)
})

test('Two tabs send each record once, and taps of both are in the one draft that both show', async () => {
  const { proxy, phone } = scene
  const first = phone.page
  const second = await phone.context.newPage()
  await second.goto(`${proxy.url}/stands/`)
  proxy.meet('gone')
  // A tab that is not looked at is slowed down by the browser.
  const inEach = async (look: (page: Page) => Promise<unknown>) => {
    for (const page of [first, second]) {
      await page.bringToFront()
      await look(page)
    }
  }
  await inEach(record)
  await inEach((page) => says(page, 2, held))
  const before = proxy.passed.length
  proxy.meet('none')
  await Promise.all([first, second].map(online))
  held += 2
  await inEach((page) => says(page, 0, held))
  expect(proxy.passed.slice(before).flatMap(({ ids }) => ids)).toHaveLength(2)

  await begin(second)
  await press(second, 'Start of the match').click()
  await tap(second, 'Scored: Pier')
  await first.bringToFront()
  await link(first, /Go on with .*\(1 tap\)$/).click()
  await tap(first, 'Missed: Mast')
  await second.bringToFront()
  await second.getByText(/^Missed: Mast at/).waitFor()
  await tap(second, 'Dropped')
  await press(second, 'To the check').click()
  await first.bringToFront()
  await press(first, 'Right: keep it').click()
  held++
  await inEach((page) => says(page, 0, held))
  const rows = await allThereOnce(scene, first)
  expect(whatOf(rows.at(-1)!)).toEqual(['pier', 'mast', 'dropped'])
  await second.close()
})

describe('A browser that is killed', () => {
  test('between two taps has every tap that it showed as kept', async () => {
    let { page } = scene.phone
    await begin(page)
    await press(page, 'Start of the match').click()
    for (const name of ['Collected: Slip', 'Scored: Pier', 'I looked away']) await tap(page, name)
    page = await scene.crash()
    await link(page, /Go on with .*\(3 taps\)$/).click()
    await page.getByText(/^I looked away at/).waitFor()
    await tap(page, 'Looking again')
    if (inLongForm) {
      page = await scene.crash()
      await link(page, /Go on with .*\(4 taps\)$/).click()
    }
    await press(page, 'To the check').click()
    await press(page, 'Right: keep it').click()
    held++
    await says(page, 0, held)
    const rows = await allThereOnce(scene, page)
    expect(whatOf(rows.at(-1)!)).toEqual(['collected', 'pier', 'unseen', 'seen'])
  })

  test('while it sends has lost and doubled nothing, though what it sent arrives after what it sends later', async () => {
    const { proxy } = scene
    proxy.meet('held')
    await record(scene.phone.page)
    await expect.poll(() => proxy.met).toBe(1)
    const page = await scene.crash()
    // It still waits on the way, from a browser that is no more; the new one may have sent meanwhile.
    const waiting = proxy.met
    proxy.meet('none')
    await record(page)
    held += 2
    await says(page, 0, held)
    const before = proxy.passed.length
    await proxy.release()
    expect(proxy.passed).toHaveLength(before + waiting)
    await allThereOnce(scene, page)
    await link(page, /^0 on this phone/).click()
    await page.getByText(new RegExp(`^The server holds ${held} of ${held}, `)).waitFor()
    await link(page, 'Back').click()
  })
})

test.runIf(inLongForm)(
  'Killed twelve times wherever it is, the browser has what it showed, and the server each record once',
  async () => {
    for (let round = 0; round < 12; round++) {
      let { page } = scene.phone
      await begin(page)
      await press(page, 'Start of the match').click()
      // As fast as a thumb can, and then at once: the last ones may be on their way to the disk.
      const pressed = 2 + (round % 4)
      for (let count = 0; count < pressed; count++) await press(page, 'Scored: Pier').click()
      const isKept = await page.getByText(/^Scored: Pier at/).isVisible()
      page = await scene.crash()
      const resume = link(page, /^Go on with /)
      const [, taps] = /\((\d+) taps?\)$/.exec((await resume.textContent()) ?? '')!
      expect(Number(taps)).toBeLessThanOrEqual(pressed)
      expect(Number(taps)).toBeGreaterThanOrEqual(isKept ? pressed : 0)
      await resume.click()
      await press(page, 'To the check').click()
      await press(page, 'Right: keep it').click()
      // Another part of the way to the server in each round.
      await new Promise((resolve) => setTimeout(resolve, 7 * round))
      page = await scene.crash()
      await page.goto(`${scene.proxy.url}/stands/#/`)
      const drafts = await everything<{ step: string }>(page, 'drafts')
      if (drafts.some(({ step }) => step !== 'saved')) {
        // Killed before the record was made of the draft: it is there to be kept.
        await link(page, /^Go on with /).click()
        await press(page, 'Right: keep it').click()
      }
      held++
      await says(page, 0, held)
    }
    await allThereOnce(scene, scene.phone.page)
  },
)

test('A clock that is wrong by a day, and one that is put right in the middle of a match, move no tap and no match', async () => {
  const { page } = scene.phone
  const wrong = (hours: number) =>
    page.evaluate((ms) => {
      const clock = globalThis as { rightNow?: () => number }
      clock.rightNow ??= Date.now
      const { rightNow } = clock
      Date.now = () => rightNow() + ms
    }, hours * 3_600_000)
  await wrong(24)
  await online(page)
  // Drawn anew, by the clock of now.
  await link(page, 'Settings').click()
  await link(page, 'Back').click()
  // Its next match is not over because the phone thinks that it is tomorrow.
  await press(page, 'Record it').waitFor()
  await begin(page)
  await press(page, 'Start of the match').click()
  await tap(page, 'Collected: Slip')
  await wrong(0)
  await tap(page, 'Scored: Pier')
  // Some minutes ahead, as if it had slept, which it did not before this scout’s eyes.
  await wrong(5 / 60)
  await tap(page, 'Dropped')
  await wrong(24)
  await press(page, 'To the check').click()
  await press(page, 'Right: keep it').click()
  held++
  await says(page, 0, held)
  const row = (await allThereOnce(scene, page)).at(-1)!
  expect(row.sequence).toBe(held)
  expect(Date.parse(row.made)).toBeGreaterThan(Date.now() + 23 * 3_600_000)
  expect(whatOf(row)).toEqual(['collected', 'pier', 'dropped'])
  for (const { elapsed } of (row.body as Observation).timeline!) {
    expect(elapsed).toBeGreaterThanOrEqual(0)
    expect(elapsed).toBeLessThan(120)
  }
  // The server's time stands in the receipt, with its day, since by this phone it is another.
  await link(page, /^0 on this phone/).click()
  const day = new Date().toLocaleString('en-GB', { day: 'numeric', month: 'short' })
  await page.getByText(new RegExp(`^The server holds ${held} of ${held}, ${day}, \\d\\d:\\d\\d`)).waitFor()
  await wrong(0)
  await link(page, 'Back').click()
})

test('Records of one person are never sent under another’s name, and the phone says whose they are', async () => {
  const { proxy, phone, mia, ben } = scene
  const { page } = phone
  proxy.meet('gone')
  await record(page)
  await says(page, 1, held)
  const before = proxy.passed.length
  await signIn(phone.context, proxy, ben)
  proxy.meet('none')
  await online(page)
  await says(page, 0, held, 1)
  await record(page)
  held++
  await says(page, 0, held, 1)
  await link(page, /^0 on this phone/).click()
  await page.getByText('Recorded by Mia: it is sent when Mia signs in here again.').waitFor()
  await link(page, 'Back').click()
  await signIn(phone.context, proxy, mia)
  await online(page)
  held++
  await says(page, 0, held)
  const rows = await allThereOnce(scene, page)
  const scouts = new Map(rows.map(({ id, scout }) => [id, scout]))
  const under = (cookie: string) => (cookie === ben.cookie ? ben.id : mia.id)
  const sent = proxy.passed.slice(before).flatMap(({ ids, cookie }) => ids.map((id) => [scouts.get(id), under(cookie)]))
  expect(sent).toEqual([
    [ben.id, ben.id],
    [mia.id, mia.id],
  ])
})

test('A row of a kind that this server does not know is refused by itself: the phone keeps it and says so', async () => {
  const { page } = scene.phone
  const id = '0192f3a4-0000-7000-8000-00000000f0f0'
  const [last] = (await outboxOf(page)).sort((a, b) => b.row.sequence - a.row.sequence)
  const sequence = last!.row.sequence + 1
  const row = { ...last!.row, id, kind: 'hologram', sequence, body: { format: 7 } }
  await page.evaluate(
    (kept) =>
      new Promise<void>((resolve) => {
        const opened = indexedDB.open('cyclewright-stands')
        opened.onsuccess = () => {
          const writing = opened.result.transaction('outbox', 'readwrite')
          writing.objectStore('outbox').add(kept)
          writing.oncomplete = () => {
            opened.result.close()
            resolve()
          }
        }
      }),
    { ...last!, id, sequence, state: 'phone', row },
  )
  await record(page)
  held++
  await says(page, 0, held, 1)
  await link(page, /^0 on this phone/).click()
  await page.getByText(/^The server can not read it\. /).waitFor()
  await allThereOnce(scene, page, [id])
  const kept = (await outboxOf(page)).find((each) => each.id === id)!
  expect([kept.state, kept.outcome, kept.row]).toEqual(['attention', 'refused', row])
  await link(page, 'Back').click()
})

describe('Storage that is refused', () => {
  test('in the middle of a record is said, and what is on the screen is written as soon as there is room', async () => {
    const { page } = scene.phone
    // What a browser without room does: it takes the row, and then ends the transaction.
    const full = (is: boolean) =>
      page.evaluate((refuse) => {
        const store = IDBObjectStore.prototype as IDBObjectStore & { take?: IDBObjectStore['add'] }
        store.take ??= store.add
        const { take } = store
        store.add = function add(this: IDBObjectStore, ...of) {
          const asked = take.apply(this, of)
          if (refuse) this.transaction.abort()
          return asked
        }
      }, is)
    await full(true)
    await press(page, 'Record it').click()
    await page.getByText(/^The phone could not keep that/).waitFor()
    await press(page, 'Close').click()
    await full(false)
    await begin(page)
    await press(page, 'Start of the match').click()
    await tap(page, 'Scored: Pier')
    await full(true)
    await press(page, 'Missed: Mast').click()
    await page.getByText(/^The phone could not keep what was tapped last/).waitFor()
    await press(page, 'Dropped').click()
    await press(page, 'To the check').click()
    await press(page, 'Right: keep it').click()
    await page.getByText(/^The phone could not keep this/).waitFor()
    expect((await everything<{ what: string }>(page, 'taps')).filter(({ what }) => what === 'dropped')).toHaveLength(2)
    await full(false)
    await press(page, 'Right: keep it').click()
    held++
    await says(page, 0, held, 1)
    const rows = (await outboxOf(page)).sort((a, b) => a.row.sequence - b.row.sequence)
    expect(whatOf(rows.at(-1)!.row)).toEqual(['pier', 'mast', 'dropped'])
  })

  test('from the beginning is said before anything is recorded', async () => {
    const { context } = scene.phone
    const page = await context.newPage()
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('refused', 'SecurityError')
      }
    })
    await page.goto(`${scene.proxy.url}/stands/`)
    await page
      .getByRole('alert')
      .getByText(/What you record here would be lost/)
      .waitFor()
    expect(await page.getByRole('button').allTextContents()).toEqual(['Try again'])
    await page.close()
  })
})
