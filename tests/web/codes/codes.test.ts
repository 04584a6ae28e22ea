import jsQR from 'jsqr'
import { describe, expect, test } from 'vitest'
import { game } from '../../../seed/game.ts'
import { CodeError, Collector, fromBase45, idTable, readMessage } from '../../../src/model/scouting/code/index.ts'
import type { Row } from '../../../src/model/scouting/index.ts'
import { outboxFile, readOutboxFile } from '../../../web/codes/outboxFile.ts'
import { deflated, inflated, shownPack } from '../../../web/codes/pack.ts'
import { fitsACode, rowsFrom, shownRows } from '../../../web/codes/rows.ts'
import type { Shown } from '../../../web/codes/shown.ts'
import { asPixels, picture, type Sight } from './picture.ts'
import { tappedRow } from './tapped.ts'

const table = idTable(game)
const find = async () => table

/** Looks at the codes that are shown, from an index on, until the message is there. */
function looked(shown: Shown, sight: Sight, from = 0): { message: Uint8Array; looks: number } {
  const collector = new Collector()
  for (let looks = 1; looks < 40; looks++) {
    const code =
      shown.kind === 'still' ? { text: shown.text, still: true } : { text: shown.frame(from + looks - 1), still: false }
    const found = jsQR(asPixels(picture(code, sight)), sight.width, sight.height, { inversionAttempts: 'dontInvert' })
    const message = found ? collector.add(found.data).message : null
    if (message) return { message, looks }
  }
  throw new Error('no message')
}

async function rowsSeen(shown: Shown, sight: Sight, from?: number): Promise<{ rows: Row[]; looks: number }> {
  const { message, looks } = looked(shown, sight, from)
  const read = readMessage(message)
  return { rows: read.what === 'rows' ? await rowsFrom(read.rows, find) : [], looks }
}

const camera: Sight = { width: 480, height: 480, turned: 4, noise: 8 }

describe('records as pictures', () => {
  test('a finished record of 46 taps is one code that stands still, read askew and grainy', async () => {
    const row = tappedRow({ phone: 1, sequence: 1, trips: 23 })
    const shown = shownRows([row], () => table)
    expect(shown.kind).toBe('still')
    expect(fromBase45((shown as { text: string }).text).length).toBeLessThanOrEqual(300)
    expect(await rowsSeen(shown, camera)).toEqual({ rows: [row], looks: 1 })
  })

  test('ten records run as a few codes, read from the middle on with as many looks as there are codes', async () => {
    const rows = Array.from({ length: 10 }, (_, index) => tappedRow({ phone: 1, sequence: index + 1, trips: 20 }))
    const shown = shownRows(rows, () => table)
    expect(shown.kind).toBe('sequence')
    const { needed } = shown as { needed: number }
    expect(needed).toBeLessThanOrEqual(6)
    const seen = await rowsSeen(shown, camera, 4)
    expect(seen.rows).toEqual(rows)
    expect(seen.looks).toBeLessThanOrEqual(needed + 1)
  })

  test('of a game that is not known here are refused in words', async () => {
    const { message } = looked(
      shownRows([tappedRow({ phone: 1, sequence: 1, trips: 1 })], () => table),
      camera,
    )
    const read = readMessage(message) as { rows: Uint8Array[] }
    await expect(rowsFrom(read.rows, async () => null)).rejects.toEqual(new CodeError('otherGame'))
  })

  test('photos do not go by code', () => {
    const { body: _, ...way } = tappedRow({ phone: 1, sequence: 1, trips: 0 })
    expect(fitsACode({ ...way, kind: 'photo', body: { id: way.id, type: 'image/jpeg', data: 'AAAA' } })).toBe(false)
  })
})

test('a whole event for the phones is a hundred matches in some thirty codes, and comes back as it was', async () => {
  const team = (index: number) => ({ team: String(90_001 + index), counts: true, state: 'expected' as const })
  const matches = Array.from({ length: 100 }, (_, n) => {
    const [a, b, c, d, e, f] = [1, 5, 11, 17, 22, 29].map((step) => team((n * step + step) % 36))
    return { id: `q${n}`, phase: 'qualification', number: n + 1, play: 1, red: [a, b, c], blue: [d, e, f] }
  })
  const assignments = matches.flatMap(({ id }, n) =>
    (['red', 'blue'] as const).flatMap((alliance) =>
      ([1, 2, 3] as const).map((position) => ({
        match: id,
        seat: { alliance, position },
        person: `p${(n + position) % 9}`,
      })),
    ),
  )
  const pack = { event: { id: 'harbour' }, game: { revision: 1, body: game }, matches, assignments, people: [] }
  const shown = await shownPack(pack)
  expect((shown as { needed: number }).needed).toBeLessThanOrEqual(35)
  const collector = new Collector()
  let message: Uint8Array | null = null
  for (let index = 3; !message; index += 2)
    message = collector.add((shown as { frame(i: number): string }).frame(index)).message
  const read = readMessage(message)
  expect(await inflated((read as { deflated: Uint8Array }).deflated)).toEqual(pack)
  await expect(inflated((await deflated(pack)).subarray(0, -9))).rejects.toEqual(new CodeError('damaged'))
})

describe('an outbox as a file', () => {
  const rows = [tappedRow({ phone: 1, sequence: 1, trips: 3 }), tappedRow({ phone: 1, sequence: 2, trips: 2 })]

  test('comes back as it was, also with a byte-order mark before it', () => {
    const { name, text } = outboxFile(rows)
    expect(name).toMatch(/^records-harbour-[0-9a-f]{8}\.json$/)
    expect(readOutboxFile(text)).toEqual({ rows })
    expect(readOutboxFile(`\ufeff${text}`)).toEqual({ rows })
  })

  test.each([
    ['another file', 'team,points\n1,2', 'foreign'],
    ['nothing', 'null', 'foreign'],
    ['a later one', '{"kind":"outbox","format":2,"rows":[]}', 'newer'],
    ['one with something else between the rows', '{"kind":"outbox","format":1,"rows":[3]}', 'damaged'],
  ])('%s is refused in words', (_, text, problem) => {
    expect(readOutboxFile(text)).toEqual({ problem })
  })
})
