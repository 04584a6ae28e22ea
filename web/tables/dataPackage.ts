import { words } from '../words/catalogue.ts'
import type { TableData } from './table.ts'

const profile = (name: string) => `https://datapackage.org/profiles/2.0/${name}.json`

/**
 * What stands in the file of a table: a Data Package with a Table Schema. Source: Data Package Standard 2.0
 * (Frictionless), datapackage.org/standard. `made`: moment of writing, ISO 8601.
 */
export function dataPackage(table: TableData, made: string): object {
  const texts = words().tables
  return {
    $schema: profile('datapackage'),
    name: table.name.replaceAll('_', '-'),
    title: table.title,
    description: texts.packageDescription,
    created: made,
    resources: [
      {
        name: table.name.replaceAll('_', '-'),
        type: 'table',
        title: table.title,
        path: `${table.name}.csv`,
        format: 'csv',
        mediatype: 'text/csv',
        encoding: 'utf-8',
        dialect: {
          $schema: profile('tabledialect'),
          delimiter: ',',
          lineTerminator: '\r\n',
          quoteChar: '"',
          doubleQuote: true,
          header: true,
        },
        schema: {
          $schema: profile('tableschema'),
          fields: table.columns.map(({ name, title, type, unit }) => ({
            name,
            title,
            type,
            ...(unit === undefined ? {} : { description: texts.unit(unit), unit }),
          })),
          missingValues: [''],
        },
      },
    ],
  }
}
