import { parse as readStrictly } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readCsv, writeCsv } from '../../../web/tables/csv.ts'
import { escapeText, unescapeText } from '../../../web/tables/formula.ts'
import type { Cell, Column, TableData } from '../../../web/tables/table.ts'

const column = (name: string, type: Column['type']): Column => ({ name, title: name, type })
const table = (columns: Column[], rows: Cell[][]): TableData => ({ name: 'table', title: 'Table', columns, rows })

/** Texts with what is hard for CSV and for spreadsheets in them. */
const hard = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc
    .array(fc.constantFrom('=', '+', '-', '@', "'", '"', ',', ';', '\n', '\r', '\t', ' ', 'a', '0', 'ä', '\ufeff'), {
      minLength: 1,
      maxLength: 8,
    })
    .map((letters) => letters.join('')),
)
const cells: { readonly [type in Column['type']]: fc.Arbitrary<Cell> } = {
  string: fc.option(hard.filter((text) => text !== '')),
  number: fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0)),
  integer: fc.option(fc.integer()),
  boolean: fc.option(fc.boolean()),
}
const tables = fc
  .array(fc.constantFrom('string', 'number', 'integer', 'boolean'), { minLength: 1, maxLength: 5 })
  .chain((types) =>
    fc.array(fc.tuple(...types.map((type) => cells[type])), { maxLength: 6 }).map((rows) =>
      table(
        types.map((type, index) => column(`${type}_${index}`, type)),
        rows,
      ),
    ),
  )

describe('round trip', () => {
  test('what is written is read back, with and without the byte-order mark', async () => {
    await fc.assert(
      fc.asyncProperty(tables, fc.boolean(), async (given, mark) => {
        const text = await writeCsv(given, { mark })
        expect(text.startsWith('\ufeff')).toBe(mark)
        expect(await readCsv(text, given.columns)).toEqual(given.rows)
      }),
      { numRuns: 600 },
    )
  })

  test('another reader, strict by RFC 4180, finds the same cells, and none that a spreadsheet would run', async () => {
    await fc.assert(
      fc.asyncProperty(tables, async (given) => {
        const text = await writeCsv(given)
        const found: string[][] = readStrictly(text, { recordDelimiter: '\r\n', relaxColumnCount: false })
        expect(found[0]).toEqual(given.columns.map(({ name }) => name))
        expect(found.length).toBe(given.rows.length + 1)
        for (const [line, row] of given.rows.entries())
          for (const [at, cell] of row.entries()) {
            const shown = found[line + 1]![at]!
            if (typeof cell === 'string') {
              expect(shown).not.toMatch(/^[=+\-@\t\r\n]/)
              expect(unescapeText(shown)).toBe(cell)
            } else expect(shown).toBe(cell === null ? '' : String(cell))
          }
      }),
      { numRuns: 300 },
    )
  })

  test('an escape is undone, and no two texts share one', () => {
    fc.assert(
      fc.property(hard, hard, (one, other) => {
        expect(unescapeText(escapeText(one))).toBe(one)
        expect(escapeText(one) === escapeText(other)).toBe(one === other)
      }),
    )
    expect(escapeText('=1+1')).toBe("'=1+1")
    expect(escapeText("'=1+1")).toBe("''=1+1")
    expect(escapeText("don't")).toBe("don't")
    expect(unescapeText("'tis")).toBe("'tis")
  })
})

describe('the file', () => {
  test('has a heading, ends every line with CR LF, and doubles quotation marks: the example of RFC 4180, section 2', async () => {
    const columns = [column('aaa', 'string'), column('bbb', 'string'), column('ccc', 'string')]
    const rows = [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'b"bb', 'y,y'],
    ]
    expect(await writeCsv(table(columns, rows))).toBe('aaa,bbb,ccc\r\naaa,"b\r\nbb",ccc\r\nzzz,"b""bb","y,y"\r\n')
  })
  test('leaves negative numbers alone: only texts are escaped', async () => {
    const rows = [[-1.5, '-1.5']]
    expect(await writeCsv(table([column('a', 'number'), column('b', 'string')], rows))).toBe("a,b\r\n-1.5,'-1.5\r\n")
  })
  test('is not written with a number that is none', async () => {
    await expect(writeCsv(table([column('a', 'number')], [[Number.NaN]]))).rejects.toThrow('A table can not hold NaN.')
  })
})

describe('a file that is not what it should be', () => {
  const columns = [column('who', 'string'), column('seconds', 'number'), column('tries', 'integer')]

  test('is read with bare line ends too, as other programs write it', async () => {
    expect(await readCsv('who,seconds,tries\nTilly,1.5,2\n', columns)).toEqual([['Tilly', 1.5, 2]])
    expect(await readCsv('who,seconds,tries\n"a\nb",1.5,2', columns)).toEqual([['a\nb', 1.5, 2]])
  })
  test('is answered with the record and the column', async () => {
    await expect(readCsv('who,time\r\nTilly,1\r\n', columns)).rejects.toThrow(
      'The file has the columns ‘who, time’; expected were ‘who, seconds, tries’.',
    )
    await expect(readCsv('who,seconds,tries\r\nTilly,fast,2\r\n', columns)).rejects.toThrow(
      'Record 2 of the file, column ‘seconds’: ‘fast’ is not what the column holds.',
    )
    await expect(readCsv('who,seconds,tries\r\nTilly,1,2.5\r\n', columns)).rejects.toThrow('column ‘tries’: ‘2.5’')
    await expect(readCsv('who,seconds,tries\r\nTilly,1\r\n', columns)).rejects.toThrow(
      'Record 2 of the file has 2 cells; 3 were expected.',
    )
    await expect(readCsv('who,seconds,tries\r\n"Tilly,1,2\r\n', columns)).rejects.toThrow('is not CSV')
  })
})
