import type { Field, Table } from './types.ts'

const profile = (name: string) => `https://datapackage.org/profiles/2.0/${name}.json`

const fieldOf = ({ name, type, about, unit, needed }: Field) => ({
  name,
  type,
  description: unit === undefined ? about : `${about} (${unit})`,
  ...(unit === undefined ? {} : { unit }),
  ...(needed ? { constraints: { required: true } } : {}),
})

const slug = (name: string): string => name.replaceAll('_', '-')

/**
 * What stands in the file of an event's tables: a Data Package with a Table Schema for each. Source: Data Package Standard 2.0
 * (Frictionless), datapackage.org/standard.
 *
 * @param made moment of writing, ISO 8601
 */
export function packageOf(tables: readonly Table[], of: { id: string; title: string; made: string }): object {
  return {
    $schema: profile('datapackage'),
    name:
      of.id
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '') || 'event',
    title: of.title,
    description:
      'An event as tables. Nicknames stand in them. Texts that a spreadsheet would take for a formula have an apostrophe in front, and so has an empty text; an empty cell says nothing.',
    created: of.made,
    resources: tables.map(({ name, title, about, fields, key, foreign }) => ({
      name: slug(name),
      type: 'table',
      title,
      description: about,
      path: `${name}.csv`,
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
        fields: fields.map(fieldOf),
        missingValues: [''],
        primaryKey: key,
        ...(foreign && {
          foreignKeys: [{ fields: foreign.fields, reference: { resource: slug(foreign.table), fields: foreign.key } }],
        }),
      },
    })),
  }
}
