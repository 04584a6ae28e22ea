import { describe, expect, test } from 'vitest'
import { dataPackage } from '../../../web/tables/dataPackage.ts'
import { shownTable } from '../../../web/tables/shown.ts'
import { uniqueNames } from '../../../web/tables/table.ts'

describe('a table as it is shown', () => {
  const table = shownTable(
    'Worth of each stage',
    ['Stage', 'Takes', 'Worth', 'On the way', 'Best', 'Worth'],
    [
      ['Raise the arm', '1.5\u00a0s', '+0.4', '62\u00a0%', '41.0', 3],
      ['Aim', '0.8\u00a0s', '\u22120.1', '–', '62\u00a0%', 4],
    ],
  )
  test('has numbers where a column has nothing else, in one unit, and a true minus is one', () => {
    expect(table.columns.map(({ type, unit }) => [type, unit])).toEqual([
      ['string', undefined],
      ['number', 's'],
      ['number', undefined],
      ['number', '%'],
      ['string', undefined],
      ['number', undefined],
    ])
    expect(table.rows).toEqual([
      ['Raise the arm', 1.5, 0.4, 62, '41.0', 3],
      ['Aim', 0.8, -0.1, null, '62\u00a0%', 4],
    ])
  })
  test('has names that a file and every program can take, each once', () => {
    expect(table.name).toBe('worth_of_each_stage')
    expect(table.columns.map(({ name }) => name)).toEqual(['stage', 'takes', 'worth', 'on_the_way', 'best', 'worth_2'])
    expect(uniqueNames(['Größe', '10 %', '…', '…'])).toEqual(['grosse', 'n_10', 'column', 'column_2'])
  })
})

describe('the description beside a table', () => {
  test('names file, dialect, and each column with type and unit, by the Data Package Standard', () => {
    const described = dataPackage(
      {
        name: 'worth_of_a_stage',
        title: 'Worth',
        columns: [
          { name: 'stage', title: 'Stage', type: 'string' },
          { name: 'takes', title: 'Takes', type: 'number', unit: 's' },
        ],
        rows: [],
      },
      '2027-01-16T15:20:00Z',
    ) as {
      name: string
      created: string
      resources: { name: string; path: string; schema: unknown; dialect: object }[]
    }
    const [resource] = described.resources
    // Names by the standard: small letters, digits, point, hyphen and underscore.
    expect(described.name).toMatch(/^[-a-z0-9._/]+$/)
    expect(resource!.name).toMatch(/^[-a-z0-9._/]+$/)
    expect(described.created).toBe('2027-01-16T15:20:00Z')
    expect(resource!.path).toBe('worth_of_a_stage.csv')
    expect(resource!.dialect).toMatchObject({ delimiter: ',', lineTerminator: '\r\n', header: true })
    expect(resource!.schema).toMatchObject({
      fields: [
        { name: 'stage', title: 'Stage', type: 'string' },
        { name: 'takes', title: 'Takes', type: 'number', unit: 's', description: 'Unit: s' },
      ],
      missingValues: [''],
    })
  })
})
