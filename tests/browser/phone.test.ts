import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import jsQR from 'jsqr'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../seed/game.ts'
import { Collector, idTable, readMessage } from '../../src/model/scouting/code/index.ts'
import { shownPack } from '../../web/codes/pack.ts'
import { rowsFrom } from '../../web/codes/rows.ts'
import type { StandsPack } from '../../web/codes/standsPack.ts'
import { asPixels } from '../web/codes/picture.ts'
import { type Shot, writeFilm } from '../web/codes/video.ts'
import { findings } from './axe.ts'
import { held, withEvent } from './harbour.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true }
const sight = { width: 640, height: 480, turned: -4, noise: 8 }

let folder: string
let world: World

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'cyclewright-phone-'))
})
afterAll(async () => {
  await world.close()
  await rm(folder, { recursive: true, force: true })
})

/** Says who this is; the page has an event by then. */
async function signIn(page: Page): Promise<void> {
  await page.getByLabel('What are you called?').fill('Heron')
  await page.getByRole('button', { name: 'Go on' }).click()
}

/** What the code on the screen says. */
async function codeOn(page: Page): Promise<string | undefined> {
  const { dark, width } = await page.locator('.code-shown canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { data, width } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
    return {
      dark: Array.from({ length: data.length / 4 }, (_, dot) => (data[4 * dot]! < 128 ? '1' : '0')).join(''),
      width,
    }
  })
  const grey = Uint8Array.from(dark, (dot) => (dot === '1' ? 0 : 255))
  return jsQR(asPixels(grey), width, grey.length / width, { inversionAttempts: 'dontInvert' })?.data
}

/** A picture of many kilobytes: noise does not compress. */
const large = (page: Page) =>
  page.evaluate(() => {
    const canvas = document.createElement('canvas')
    canvas.width = canvas.height = 900
    const context = canvas.getContext('2d')!
    const picture = context.createImageData(900, 900)
    for (let at = 0; at < picture.data.length; at += 65_536)
      crypto.getRandomValues(picture.data.subarray(at, at + 65_536) as unknown as Uint8Array<ArrayBuffer>)
    context.putImageData(picture, 0, 0)
    return canvas.toDataURL('image/png').split(',')[1]!
  })

describe('a phone', () => {
  beforeAll(async () => {
    world = await openWorld()
    await withEvent(world)
  })

  test('keeps a pit visit, a ranking and a change, shows them as a code, and leads see them as claimed', async () => {
    const page = await world.open('/stands/', phone)
    await page.getByRole('button', { name: 'Harbour trial' }).click()
    await signIn(page)

    await page.getByRole('link', { name: 'Pit visit' }).click()
    await page.getByLabel('Team', { exact: true }).selectOption('90005')
    await page.getByLabel('Piers: pieces a match').fill('fast')
    await page.getByLabel('Seconds for a cycle').fill('7,5')
    const file = { name: 'robot.png', mimeType: 'image/png', buffer: Buffer.from(await large(page), 'base64') }
    expect(file.buffer.length).toBeGreaterThan(1_000_000)
    await page.getByLabel('Take or choose a photo').setInputFiles(file)
    await page.getByRole('img', { name: 'Photo 1' }).waitFor()
    await page.getByRole('button', { name: 'Keep it on this phone' }).click()
    await page.getByText('‘fast’ is not a number from 0 up.').waitFor()
    expect(await page.getByLabel('Seconds for a cycle').inputValue()).toBe('7,5')
    // What is in the form and not kept yet is on the phone's disk, photos too.
    await page.reload()
    await page.getByRole('img', { name: 'Photo 1' }).waitFor()
    expect(await page.getByLabel('Seconds for a cycle').inputValue()).toBe('7,5')
    await page.getByLabel('Piers: pieces a match').fill('12')
    expect(await findings(page)).toEqual([])
    await page.getByRole('button', { name: 'Keep it on this phone' }).click()
    await page.getByText('Kept. It is sent').waitFor()

    await page.getByRole('link', { name: 'Back' }).click()
    await page.getByRole('link', { name: 'Rank robots' }).click()
    // One stroke from the second robot up to the first; the third follows.
    const middle = async (team: string) => {
      const { x, y, width, height } = (await page.getByRole('button', { name: `Team ${team}` }).boundingBox())!
      return [x + width / 2, y + height / 2] as const
    }
    await page.mouse.move(...(await middle('90002')))
    await page.mouse.down()
    await page.mouse.move(...(await middle('90001')), { steps: 4 })
    await page.mouse.up()
    await page.getByText('Best first: 90002 › 90001 › 90003').waitFor()
    await page.getByRole('button', { name: 'Keep it on this phone' }).click()
    await page.getByText('Kept. It is sent').waitFor()

    await page.getByRole('link', { name: 'Back' }).click()
    await page.getByRole('link', { name: 'Robot changed' }).click()
    await page.getByLabel('Team', { exact: true }).selectOption('90002')
    await page.getByLabel('After which match').selectOption({ label: 'Qualification 12' })
    await page.getByLabel('What is new').fill('new intake')
    await page.reload()
    await expect.poll(() => page.getByLabel('What is new').inputValue()).toBe('new intake')
    expect(await page.getByLabel('After which match').inputValue()).not.toBe('')
    await page.getByRole('button', { name: 'Keep it on this phone' }).click()
    await page.getByText('Kept. It is sent').waitFor()

    await expect.poll(async () => (await held(world)).length).toBe(4)
    const rows = await held(world)
    const photo = rows.find(({ kind }) => kind === 'photo')!
    expect('data' in photo.body && Buffer.from(photo.body.data, 'base64').length).toBeLessThanOrEqual(200_000)
    expect(rows.find(({ kind }) => kind === 'visit')).toMatchObject({
      scout: 'Heron',
      body: { team: '90005', claims: { goals: { piers: 12 }, cycle: 7.5 }, photos: [photo.id] },
    })

    // The same rows leave the phone's screen as dots.
    await page.getByRole('link', { name: 'Back' }).click()
    await page.getByRole('link', { name: 'Show records as a code' }).click()
    await page.getByRole('radio', { name: 'all of this event' }).check()
    await page.getByRole('img', { name: 'Code with 3 records' }).waitFor()
    const collector = new Collector()
    let message: Uint8Array | null = null
    while (!message) {
      const text = await codeOn(page)
      message = text === undefined ? null : collector.add(text).message
    }
    const read = readMessage(message)
    const shown = read.what === 'rows' ? await rowsFrom(read.rows, async () => idTable(game)) : []
    const byId = (a: { id: string }, b: { id: string }) => a.id.localeCompare(b.id)
    expect(shown.sort(byId)).toEqual(rows.filter((row) => row !== photo).sort(byId))
    await page.context().close()

    const lead = await world.open('/event/harbour/visits')
    await lead.getByRole('img', { name: 'Photo 1 of team 90005' }).waitFor()
    await lead.getByText('claimed', { exact: true }).waitFor()
    await lead.getByText('Changed after Qualification 12.').waitFor()
    await lead.getByText('90002 › 90001 › 90003').waitFor()
    expect(await findings(lead)).toEqual([])
    await lead.context().close()
    expect(world.errors).toEqual([])
  })
})

describe.runIf(inLongForm)('a phone without a server', () => {
  test('takes an event from the lead’s screen, and says when there is nothing new', async () => {
    const pack = (await (await fetch(`${world.url}/api/stands/harbour`)).json()) as StandsPack
    await world.close()
    const shown = await shownPack(pack)
    if (shown.kind === 'still') throw new Error('a pack with a game in one code')
    const camera = join(folder, 'pack.y4m')
    const shots = Array.from(
      { length: shown.needed + 8 },
      (_, index): Shot => ({
        code: { text: shown.frame(index + 2), still: false },
        frames: 2,
      }),
    )
    writeFilm(camera, shots, { ...sight, rate: 8 })
    world = await openWorld({ camera })

    const page = await world.open('/stands/', phone)
    await page.route('**/api/**', (route) => route.abort())
    await page.reload()
    const name = 'Read a code from your lead'
    await page.getByRole('link', { name }).click()
    await page.getByText('Harbour trial: 1 match, as of').waitFor()
    await page.getByRole('button', { name: 'To the next match' }).click()
    await page.getByRole('heading', { name: 'Harbour trial', exact: true }).waitFor()
    await page.getByRole('link', { name }).click()
    await page.getByText('This phone has exactly this already.').waitFor()
    await page.getByRole('link', { name: 'Back' }).click()
    await signIn(page)
    await page.getByRole('link', { name: 'Rank robots' }).click()
    await page.getByRole('button', { name: 'Team 90002' }).waitFor()
    await page.context().close()
  })
})
