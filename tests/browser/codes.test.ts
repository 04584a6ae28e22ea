import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { game } from '../../seed/game.ts'
import { idTable } from '../../src/model/scouting/code/index.ts'
import type { Row } from '../../src/model/scouting/index.ts'
import { outboxFile } from '../../web/codes/outboxFile.ts'
import { shownRows } from '../../web/codes/rows.ts'
import { sheetFields } from '../../web/screens/event/sheets/fields.ts'
import { tappedRow } from '../web/codes/tapped.ts'
import { type Shot, writeFilm } from '../web/codes/video.ts'
import { findings } from './axe.ts'
import { held, withEvent } from './harbour.ts'
import { inLongForm } from './longForm.ts'
import { readPdf, squeezed } from './pdf.ts'
import { openWorld, type World } from './world.ts'

const table = idTable(game)
const sight = { width: 640, height: 480, turned: 3, noise: 8 }
let folder: string

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'cyclewright-codes-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

const byId = (a: Row, b: Row) => a.id.localeCompare(b.id)

describe('a record before the lead’s camera', () => {
  let world: World
  const row = tappedRow({ phone: 1, sequence: 1, trips: 20 })

  beforeAll(async () => {
    const shown = shownRows([row], () => table)
    if (shown.kind !== 'still') throw new Error('the record is too long for one code')
    const camera = join(folder, 'still.y4m')
    writeFilm(camera, [{ code: { text: shown.text, still: true }, frames: 4 }], { ...sight, rate: 10 })
    world = await openWorld({ camera })
    await withEvent(world)
  })
  afterAll(() => world.close())

  test('is on the server as it was recorded, is there once, and comes by file and by keys beside it', async () => {
    const page = await world.open('/event/harbour/hand-in')
    await page.getByRole('button', { name: 'Open the camera' }).click()
    const arrivals = page.getByRole('region', { name: 'What came in', exact: true })
    await arrivals.getByText('1 new').waitFor()
    // Where one looks who holds a phone, too.
    await page.getByRole('region', { name: 'With the camera' }).getByText('1 new').waitFor()
    expect(await held(world)).toEqual([row])
    await page.getByRole('button', { name: 'Close the camera' }).click()

    const other = tappedRow({ phone: 2, sequence: 1, trips: 3 })
    const { name, text } = outboxFile([row, other])
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) }
    await page.getByLabel('File with records').setInputFiles(file)
    await arrivals.getByText('1 there already').waitFor()
    await arrivals.getByText('1 new').waitFor()
    expect((await held(world)).sort(byId)).toEqual([row, other].sort(byId))

    // A typist at four keys a second: no key but digits, Enter, and the letters of a note.
    const strokes: string[] = []
    const key = async (name: string) => {
      strokes.push(name)
      await page.keyboard.press(name, inLongForm ? { delay: 0 } : {})
      if (inLongForm) await new Promise((resolve) => setTimeout(resolve, 250))
    }
    const box = async (typed: string) => {
      for (const letter of typed) await key(letter)
      await key('Enter')
    }
    await page.getByLabel('Match', { exact: true }).focus()
    const began = performance.now()
    await box('12')
    await box('5')
    const written: { [box: string]: string } = {
      left: '1',
      'auto.piers.scored': '2',
      'teleop.piers.scored': '14',
      'teleop.piers.missed': '3',
      'teleop.gantry.scored': '6',
      'finish.attempted': '1',
      'finish.achieved': '1',
      'foul.minor': '1',
      note: 'slow at the slipway, hung late',
    }
    for (const { key: name } of sheetFields(game)) await box(written[name] ?? '')
    await page.getByText(/Saved: Qualification 12, team 90005, 22 scored/).waitFor()
    const seconds = (performance.now() - began) / 1000
    expect(strokes.length / 4).toBeLessThanOrEqual(40)
    if (inLongForm) expect(seconds).toBeLessThanOrEqual(40)
    await page.getByRole('button', { name: 'Hand in 1 sheet now' }).click()
    await arrivals.getByText('2 new').waitFor()
    const keyed = (await held(world)).at(-1)!
    expect(keyed).toMatchObject({
      kind: 'observation',
      seat: { alliance: 'blue', position: 2 },
      body: { team: '90005' },
    })
    expect(await findings(page)).toEqual([])
    console.info(`a sheet: ${strokes.length} keys, ${(strokes.length / 4).toFixed(1)} s at four a second`)
    await page.context().close()
    expect(world.errors).toEqual([])
  })

  test('printed on A4 and on Letter, each alliance has a page with three robots and every box', async () => {
    const page = await world.open('/event/harbour/sheets')
    await page.getByLabel('From match').fill('12')
    await page.getByText('2 pages, black and white').waitFor()
    for (const format of ['A4', 'Letter'] as const) {
      const pages = await readPdf(await page.pdf({ format }))
      expect(pages, format).toHaveLength(2)
      for (const [index, first] of [1, 4].entries()) {
        const { text, words } = pages[index]!
        for (const place of [first, first + 1, first + 2])
          expect(text).toContain(squeezed(`Place ${place} · team ${90_000 + place}`))
        expect(text.split(squeezed('Gantry missed, teleop'))).toHaveLength(4)
        expect(text.split(squeezed('Finish reached'))).toHaveLength(4)
        // A PDF's sizes come a little below 9 pt by rounding.
        expect(Math.min(...words.map(({ size }) => size))).toBeGreaterThanOrEqual(8.9)
      }
    }
    await page.context().close()
  })
})

describe.runIf(inLongForm)('a browser that has a reader of its own', () => {
  let world: World
  const row = tappedRow({ phone: 1, sequence: 1, trips: 20 })
  const shown = shownRows([row], () => table)
  const text = shown.kind === 'still' ? shown.text : ''

  beforeAll(async () => {
    const camera = join(folder, 'own.y4m')
    writeFilm(camera, [{ code: { text, still: true }, frames: 4 }], { ...sight, rate: 10 })
    world = await openWorld({ camera })
    await withEvent(world)
  })
  afterAll(() => world.close())

  test.each([
    ['is asked, and ours is not loaded', { formats: ['qr_code'], fails: false, ours: false }],
    ['that reads other codes only is left alone', { formats: ['ean_13'], fails: false, ours: true }],
    ['that fails when it is asked gives way to ours', { formats: ['qr_code'], fails: true, ours: true }],
  ])('%s', async (_, { formats, fails, ours }) => {
    const page = await world.open('/')
    await page.addInitScript(
      (own) => {
        class BarcodeDetector {
          static getSupportedFormats = async () => own.formats
          detect = async () => {
            document.documentElement.dataset['asked'] = 'yes'
            if (own.fails) throw new Error('no reader')
            return [{ rawValue: own.text }]
          }
        }
        Object.assign(globalThis, { BarcodeDetector })
      },
      { formats, fails, text },
    )
    const loaded: string[] = []
    page.on('request', (request) => loaded.push(request.url()))
    await page.goto(`${world.url}/event/harbour/hand-in`)
    await page.getByRole('button', { name: 'Open the camera' }).click()
    const arrivals = page.getByRole('region', { name: 'What came in', exact: true })
    await arrivals
      .getByText(/1 (new|there already)/)
      .first()
      .waitFor()
    expect(await held(world)).toEqual([row])
    expect(loaded.some((url) => /read\.worker/.test(url))).toBe(ours)
    expect((await page.locator('html').getAttribute('data-asked')) !== null).toBe(formats.includes('qr_code'))
    await page.context().close()
  })
})

describe.runIf(inLongForm)('six phones before one camera', () => {
  const phones = Array.from({ length: 6 }, (_, phone) =>
    Array.from({ length: 10 }, (__, index) => tappedRow({ phone, sequence: index + 1, trips: 24 })),
  )
  let world: World

  beforeAll(async () => {
    // Ten pictures a second; a phone shows six codes a second, is held for three seconds, and the next comes two later.
    const shots: Shot[] = phones.flatMap((rows): Shot[] => {
      const shown = shownRows(rows, () => table)
      if (shown.kind === 'still') throw new Error('ten records in one code')
      const codes = Array.from({ length: 18 }, (_, index) => ({ text: shown.frame(index + 3), still: false }))
      return [{ code: null, frames: 20 }, ...codes.map((code, index) => ({ code, frames: index % 3 === 0 ? 1 : 2 }))]
    })
    const camera = join(folder, 'six.y4m')
    writeFilm(camera, shots, { ...sight, rate: 10 })
    world = await openWorld({ camera })
    await withEvent(world)
  })
  afterAll(() => world.close())

  test('hand in ten records each within a minute, each once', async () => {
    const page = await world.open('/event/harbour/hand-in')
    const began = performance.now()
    await page.getByRole('button', { name: 'Open the camera' }).click()
    const camera = page.getByRole('region', { name: 'With the camera' })
    await camera.getByText('60 new').waitFor()
    const seconds = (performance.now() - began) / 1000
    console.info(`six phones × ten records: ${seconds.toFixed(1)} s`)
    expect(seconds).toBeLessThanOrEqual(60)
    expect((await held(world)).sort(byId)).toEqual(phones.flat().sort(byId))
  })
})
