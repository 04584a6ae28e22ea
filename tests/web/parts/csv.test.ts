import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parts } from '../../../seed/parts.ts'
import type { Part } from '../../../src/model/timing/parts.ts'
import { partsTable } from '../../../web/screens/parts/csv/partsTable.ts'
import { readParts } from '../../../web/screens/parts/csv/readParts.ts'
import { numbersOf, type PartKind, partKinds } from '../../../web/screens/parts/numbers.ts'
import { writeCsv } from '../../../web/tables/csv.ts'

const text = (kind: PartKind, given: readonly Part[]) => writeCsv(partsTable(kind, given))
const ofKind = (kind: PartKind) => parts.filter((part) => part.kind === kind)
const read = async (table: string) => (await readParts(table)).lines
const problems = async (table: string) => (await read(table)).flatMap((line) => line.problems)

/** Any part that the contract allows, with texts that are hard for tables. */
const hard = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }).filter((each) => each.trim() !== '')
const anyPart = (kind: PartKind): fc.Arbitrary<Part> =>
  fc
    .record({
      id: fc.uuid(),
      name: fc.oneof(hard, fc.constantFrom('=1+1', '-40 mm', '"wide"; 2,5', 'two\r\nlines')),
      source: fc.oneof(hard, fc.constant('')),
      date: fc.constantFrom('2026-11-26', '2024-02-29'),
      shares: fc.array(fc.double({ min: 0.3, max: 0.6, noNaN: true }), { minLength: 6, maxLength: 6 }),
    })
    .map(({ shares, ...head }) => {
      const numbers = numbersOf[kind].map(({ key, max, optional }, at) => [
        key,
        optional && shares[at]! > 0.5 ? undefined : max * shares[at]!,
      ])
      const part = { kind, ...head, ...Object.fromEntries(numbers.filter(([, value]) => value !== undefined)) }
      const [a, b] = shares as [number, number]
      if (kind === 'motor') part.freeCurrent = (part.stallCurrent * a) / 2
      if (kind === 'cylinder') part.rod = part.bore * a
      if (kind === 'compressor')
        part.flow = [
          [a * 1e6, b],
          [1e6 + b, b * a],
        ]
      return part as Part
    })

describe('Out and in again', () => {
  test.each(partKinds)('the %ss of the demo are the same', async (kind) => {
    const lines = await read(await text(kind, ofKind(kind)))
    expect(lines.flatMap((line) => line.problems)).toEqual([])
    expect(lines.map(({ part }) => part)).toEqual(ofKind(kind))
  })

  test.each(partKinds)('any %s is the same, to its last digit', async (kind) => {
    await fc.assert(
      fc.asyncProperty(anyPart(kind), async (part) => {
        const [line] = await read(await text(kind, [part]))
        expect(line).toMatchObject({ part, problems: [] })
      }),
      { numRuns: 60 },
    )
  })

  test('a table that a spreadsheet saved with semicolons and decimal commas, or that was pasted with tabs, is read alike', async () => {
    const comma = await text('wheel', ofKind('wheel'))
    const named = comma.replaceAll(/"([^"]*),([^"]*)"/g, '$1 $2')
    const cells = named.replaceAll(',', ';').replaceAll(/(\d)\.(\d)/g, '$1,$2')
    const [semicolons, tabs] = [await read(cells), await read(cells.replaceAll(';', '\t'))]
    expect(semicolons.flatMap((line) => line.problems)).toEqual([])
    expect(semicolons.map(({ part }) => part && { ...part, name: '', source: '' })).toEqual(
      ofKind('wheel').map((part) => ({ ...part, name: '', source: '' })),
    )
    expect(tabs).toEqual(semicolons)
  })

  test('headings may name other units, in any order', async () => {
    const [line] = await read(
      'source,stroke_in,name,rod_mm,bore_in,date\nData sheet,4,Own,8,3/4,2026-11-26\n'.replace('3/4', '0.75'),
    )
    expect(line!.part).toMatchObject({ kind: 'cylinder', stroke: 0.1016, rod: 0.008, bore: 0.01905, name: 'Own' })
    expect(line!.part!.id).toMatch(/^own-[a-z2-9]{5}$/)
    const gauge = await read('name,source,date,volume_l,highest_pressure_bar_gauge\nA,,2026-11-26,0.6,8\n')
    expect(gauge[0]!.part).toMatchObject({ volume: 0.0006, highestPressure: 901_325 })
    const speed = await read(
      'name,source,date,nominal_voltage_v,free_speed_rpm,free_current_a,stall_torque_lbf_in,stall_current_a\nA,,2026-11-26,12,6000,1,10,50\n',
    )
    expect(speed[0]!.part).toMatchObject({ freeSpeed: 628.318530718, stallTorque: 1.12984829028 })
  })
})

describe('A broken table', () => {
  const head = 'id,name,source,date,bore_m,rod_m,stroke_m'
  const good = 'a,A,,2026-11-26,0.04,0.016,0.2'

  test.each([
    ['empty', '  \n', 'There is nothing in it'],
    ['only a heading line', `${head}\n`, 'There is nothing in it'],
    ['no table of parts', 'who,seconds\nTilly,3\n', 'From the headings ‘who, seconds’ no kind of part'],
    ['binary', '\u0089PNG\u0000\u0001', 'no kind of part'],
    ['open quotation marks', `${head}\n"a,A,,2026-11-26,0.04,0.016,0.2\n`, 'its quotation marks do not close'],
    ['a column missing', 'name,source,date,bore_m,rod_m\nA,,2026-11-26,1,1\n', 'these columns are missing: stroke_m'],
    ['an unknown unit', `${head.replace('stroke_m', 'stroke_furlong')}\n${good}\n`, '‘stroke_furlong’: not known'],
    ['a column in two units', `${head},bore_mm\n${good},40\n`, 'in each of two units'],
    ['a column twice', `${head},date\n${good},2026-11-26\n`, 'The heading ‘date’ is there twice'],
    ['too many lines', `${head}\n${`${good}\n`.repeat(501)}`, 'At most 500 parts'],
  ])('with %s is refused as a whole in a sentence', async (_, table, words) => {
    await expect(readParts(table)).rejects.toThrow(words)
  })

  test.each([
    ['b,B,,2026-11-26,0.04,0.016', 'It has 6 cells; the heading line has 7.'],
    ['b,B,,2026-11-26,wide,0.016,0.2', '‘bore_m’: ‘wide’ is not a number.'],
    ['b,B,,2026-11-26,"0,04",0.016,0.2', '‘bore_m’: ‘0,04’ is not a number.'],
    ['b,B,,2026-11-26,,0.016,0.2', '‘bore_m’ is empty.'],
    ['b,B,,2026-11-26,1e999,0.016,0.2', '‘bore_m’: ‘1e999’ is not a number.'],
    ['b,B,,2026-11-26,0.6,0.016,0.2', 'bore_m: At most 500\u00a0mm, not 600\u00a0mm.'],
    ['b,B,,2026-11-26,0.04,0.039,0.2', 'Rod diameter: At most 0.95 of the bore of 40\u00a0mm, not 39\u00a0mm.'],
    ['b,B,,26.11.2026,0.04,0.016,0.2', '‘26.11.2026’ is not a day; write it like 2026-11-26.'],
    ['b,B,,2026-02-30,0.04,0.016,0.2', '‘2026-02-30’ is not a day; write it like 2026-11-26.'],
    ['b,,,2026-11-26,0.04,0.016,0.2', '‘name’ is empty.'],
    ['a,B,,2026-11-26,0.04,0.016,0.2', 'The id ‘a’ is in line 2 already.'],
  ])('keeps its good lines apart from %s', async (bad, words) => {
    const lines = await read(`${head}\n${good}\n\n${bad}\n`)
    expect(lines.map(({ part, line }) => [part !== null, line])).toEqual([
      [true, 2],
      [false, 4],
    ])
    expect(lines[1]!.problems).toEqual([words])
  })

  test('of a compressor says what is wrong with its points', async () => {
    const flow = (points: string) =>
      problems(`name,source,date,flow_points_pa_absolute_m3_per_s\nA,,2026-11-26,${points}\n`)
    expect(await flow('100000 0.0005; 400000 0.0003')).toEqual([])
    expect(await flow('100000 0.0005')).toEqual(['2 to 50 points are needed, not 1.'])
    expect((await flow('100000; 0.0005'))[0]).toContain('is not a list of points')
    expect((await flow('100000 0.0005; 3e6 0'))[0]).toContain('At most 2000\u00a0kPa(a), not 3000\u00a0kPa(a).')
    expect((await flow('400000 0.0003; 100000 0.0001'))[0]).toContain(
      'More than the pressure before it, 400\u00a0kPa(a)',
    )
    expect((await flow('100000 0.0001; 400000 0.0003'))[0]).toContain('Not more than the flow before it')
  })
})
