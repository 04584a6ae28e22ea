import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { row as rowContract } from '../../../src/api/contracts/scouting/index.ts'
import { cellsIn, writeTable } from '../../../src/api/exchange/csv.ts'
import type { EventContents } from '../../../src/model/event/archive/index.ts'
import { idTable } from '../../../src/model/scouting/code/index.ts'
import { canonicalJson, type Row } from '../../../src/model/scouting/index.ts'
import { readCell, readTables, tablesOf, writeCell } from '../../../src/model/scouting/tables/index.ts'
import { inLongForm } from '../../browser/longForm.ts'
import { event, eventId, qualification } from '../../faults/harbourEvent.ts'
import { harbour } from '../documents/harbour.ts'
import { someRow } from './someRow.ts'

const at = '2031-02-28T09:00:00.000Z'

const contentsOf = (rows: readonly Row[]): EventContents => ({
  event: [{ revision: 1, body: event, note: null, savedAt: at }],
  rules: [],
  matches: [{ match: qualification(1), revision: 1, changedAt: at, removed: false }],
  results: [],
  assignments: [],
  records: rows.map((row) => ({ row, hash: '', receivedAt: at, replaces: null, person: null })),
  apart: [],
  choices: [],
  drills: [],
  forecasts: [],
  plans: [],
  selection: [],
  people: [],
})

type Files = Map<string, string>

const written = (contents: EventContents, mark = false): Files =>
  new Map(tablesOf(contents).map((filled) => [filled.table.name, writeTable(filled, mark)]))

const readBack = (files: Files) =>
  readTables((table) => (files.has(table.name) ? cellsIn(files.get(table.name)!, table) : null), { at })

/** Texts with what CSV and spreadsheets take for something else. */
const oddText = fc
  .array(
    fc.oneof(
      fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', '"', "'", ',', ';', 'ä', 'ß', '🦑', '', ' ', '\ufeff'),
      fc.string(),
    ),
    {
      maxLength: 8,
    },
  )
  .map((parts) => parts.join(''))

describe('A cell', () => {
  test('is read as it was written, and no text is a formula for a spreadsheet', () => {
    fc.assert(
      fc.property(oddText, (text) => {
        const cell = writeCell(text)
        expect(cell).not.toMatch(/^[=+\-@\t\r]/)
        expect(cell).not.toBe('')
        expect(readCell(cell, 'string')).toEqual({ value: text })
      }),
      { numRuns: 500 },
    )
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (number) => {
        // JSON knows no negative nothing either.
        expect(readCell(writeCell(number), 'number')).toEqual({ value: number === 0 ? 0 : number })
      }),
    )
  })

  test.each([
    ['1,5', 'number', 'cellNoNumber'],
    ['1e999', 'number', 'cellNoNumber'],
    ['1.5', 'integer', 'cellNoWhole'],
    ['yes', 'boolean', 'cellNoBoolean'],
    ['[1]', 'array', 'cellNoList'],
    ['a, b', 'array', 'cellNoList'],
  ] as const)('%s is no %s', (cell, type, code) => {
    expect(readCell(cell, type)).toEqual({ code, parts: { got: cell } })
  })
})

const uuid = fc.uuid({ version: [4, 7] })
const way = fc.record({ id: uuid, device: fc.constant('p'), sequence: fc.nat(100), scout: fc.constant('s') })
const goals = fc.dictionary(fc.constantFrom('pier', 'mast', 'a b', '=x'), fc.double({ min: 0, max: 1000, noNaN: true }))

/** Rows of the other kinds, each with its optional parts there or not. */
const further: fc.Arbitrary<Row> = fc
  .tuple(
    way,
    fc.oneof(
      fc
        .tuple(
          fc.record(
            {
              goals,
              cycle: fc.double({ min: 0.1, max: 60, noNaN: true }),
              finish: fc.constant('davit'),
              routines: fc.array(fc.constantFrom('a', '["', 'b,c')),
              size: oddText.map((text) => text.slice(0, 100)),
              mass: fc.double({ min: 0, max: 1000, noNaN: true }),
            },
            { requiredKeys: [] },
          ),
          fc.array(uuid, { maxLength: 4 }),
          fc.option(oddText, { nil: undefined }),
        )
        .map(([claims, photos, note]) => ({
          kind: 'visit',
          body: { team: '7', at, claims, photos, ...(note === undefined ? {} : { note }) },
        })),
      fc.constant({ kind: 'ranking', body: { match: 'q1', by: 'driving', order: ['7', '007', 'A-1'] } }),
      fc.option(fc.constant('q1')).map((afterMatch) => ({ kind: 'change', body: { team: '007', afterMatch } })),
      fc
        .base64String({ minLength: 4, maxLength: 40 })
        .map((data) => ({ kind: 'photo', body: { type: 'image/png', data } })),
      fc.constant({ kind: 'drill', body: { drill: 'd' } }),
      fc.uuid().map((record) => ({ kind: 'withdrawal', body: { record } })),
    ),
  )
  .map(([own, { kind, body }]) => {
    const again = kind === 'photo' ? { id: own.id } : kind === 'ranking' ? { scout: own.scout } : {}
    return { ...own, kind, event: eventId, made: at, body: { ...body, ...again } } as Row
  })

const observation = someRow(idTable(harbour()))
  .filter(({ id, body }) => (body as { id?: string }).id === id)
  .chain((row) =>
    fc.option(oddText, { nil: undefined }).map((note): Row => {
      const observed = row as Extract<Row, { kind: 'observation' }>
      const body = note === undefined ? observed.body : { ...observed.body, note }
      return { ...observed, event: eventId, body }
    }),
  )

describe('Records as tables', () => {
  test('come back with every field, whatever they are: their canonical JSON is the same', () => {
    const rows = fc.uniqueArray(fc.oneof(observation, further), { selector: ({ id }) => id, maxLength: 8 })
    fc.assert(
      fc.property(rows, fc.boolean(), (all, mark) => {
        // Undefined fields are no content.
        const sent = all.map((row) => JSON.parse(JSON.stringify(row)) as Row)
        for (const row of sent) expect(rowContract.safeParse(row).error).toBeUndefined()
        const read = readBack(written(contentsOf(sent), mark))
        expect(read.problems).toEqual([])
        const back = (read.contents!.records as { row: Row }[]).map(({ row }) => canonicalJson(row))
        expect(back).toEqual(sent.map((row) => canonicalJson(row)))
      }),
      { numRuns: inLongForm ? 1000 : 80 },
    )
  })

  test('come back with event, teams, schedule and results', () => {
    const side = { points: { total: -3.25, goals: 0 }, bonuses: [], pieces: {} }
    const result = { match: 'q1', red: side, blue: { points: { total: 1 }, pieces: { pier: 2, mast: 0 } } }
    const contents: EventContents = {
      ...contentsOf([]),
      results: [{ match: 'q1', revision: 3, enteredAt: at, person: 'ada', result }],
      people: [{ id: 'ada', nickname: '@Ada' }],
    }
    const read = readBack(written(contents))
    expect(read.problems).toEqual([])
    expect(read.contents).toEqual({
      event,
      people: contents.people,
      matches: contents.matches,
      results: [{ ...contents.results[0], revision: 1 }],
      records: [],
    })
  })
})

describe('What is wrong in a table is told by table, line and column', () => {
  const files = written(contentsOf([]))
  const wrong = (table: string, from: string | RegExp, to: string) => {
    const changed = new Map(files).set(table, files.get(table)!.replace(from, to))
    expect(changed.get(table)).not.toBe(files.get(table))
    return readBack(changed).problems.map(({ path, said }) => [...path, said?.code])
  }

  test('a file from before a column was there is read without it', () => {
    const [heading, line] = files.get('event')!.split('\r\n') as [string, string]
    const at = heading.split(',').indexOf('half_life')
    const less = (cells: string) => cells.split(',').toSpliced(at, 1).join(',')
    const older = new Map(files).set('event', `${less(heading)}\r\n${less(line)}\r\n`)
    expect(at).toBeGreaterThan(0)
    expect(readBack(older).problems).toEqual([])
    expect(readBack(older).contents).toEqual(readBack(files).contents)
  })

  test.each([
    [
      'matches',
      ',team,',
      ',taem,',
      [
        ['matches', 1, 'team', 'noColumn'],
        ['matches', 1, 'taem', 'strangeColumn'],
      ],
    ],
    [
      'matches',
      /,2,90002/,
      ',zwei,90002',
      [
        ['matches', 3, 'place', 'cellNoNumber'],
        ['matches', 2, 'place', 'notThreeEach'],
      ],
    ],
    ['matches', /,90002/, ',', [['matches', 3, 'team', 'cellNeeded']]],
    [
      'matches',
      /\r\nq1,qualification,1,1,,,false,red,2/,
      '\r\nq1,qualification,9,1,,,false,red,2',
      [['matches', 3, 'number', 'matchLinesDiffer']],
    ],
    ['event', /\r\n[\s\S]*/, '\r\n', [['event', 1, 'oneEvent']]],
    ['teams', '90002,', '90002', [['teams', 3, 'otherCells']]],
  ] as const)('%s: %s', (table, from, to, told) => {
    expect(wrong(table, from as string, to)).toEqual(told)
  })
})
