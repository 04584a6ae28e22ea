import type {
  SqlDriverAdapter,
  SqlMigrationAwareDriverAdapterFactory,
  SqlQuery,
  SqlResultSet,
} from '@prisma/driver-adapter-utils'
import { ColumnTypeEnum } from '@prisma/driver-adapter-utils'
import { withEngine } from '../src/store/engine.ts'

/** The oldest version of PostgreSQL that the SQL is written for. */
const written = { version: 'PostgreSQL 13.0', number: 130_000 }

/** SQL that leads from one schema to another, by their texts alone; empty where both are alike. */
export async function differenceForPostgresql(from: string, to: string): Promise<string> {
  const model = (content: string) => ({
    tag: 'schemaDatamodel' as const,
    files: [{ path: 'schema.prisma', content }],
  })
  const { stdout } = await withEngine(new VersionOnly(), (engine) =>
    engine.diff({
      from: /^model /m.test(from) ? model(from) : { tag: 'empty' },
      to: model(to),
      script: true,
      exitCode: null,
      filters: { externalTables: [], externalEnums: [] },
    }),
  )
  const sql = stdout ?? ''
  if (/^-- This is an empty migration/.test(sql)) return ''
  // Where the tables go is there already, and even to ask for it again wants a right that the server's user may not have.
  return sql.replace(/^-- CreateSchema\nCREATE SCHEMA IF NOT EXISTS "\w+";\n\n/, '')
}

/** The engine wants a connection, of which it asks the version and nothing else where it compares two texts. */
class VersionOnly implements SqlMigrationAwareDriverAdapterFactory {
  readonly provider = 'postgres'
  readonly adapterName = 'version only'

  async connect(): Promise<SqlDriverAdapter> {
    const refuse = () => Promise.reject(new Error('The comparison of two schemas asks the database for something'))
    return {
      provider: this.provider,
      adapterName: this.adapterName,
      queryRaw: ({ sql }: SqlQuery) => (sql.includes('version()') ? Promise.resolve(answer) : refuse()),
      executeRaw: refuse,
      executeScript: refuse,
      startTransaction: refuse,
      dispose: async () => {},
    }
  }

  connectToShadowDb(): Promise<SqlDriverAdapter> {
    return this.connect()
  }
}

const answer: SqlResultSet = {
  columnNames: ['exists', 'version', 'numeric_version'],
  columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
  rows: [[true, written.version, written.number]],
}
