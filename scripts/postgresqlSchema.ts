/**
 * prisma/schema.prisma as PostgreSQL gets it: the same models, another provider, and a client of its own. So there is one source, and whoever adds a
 * table adds it to both engines.
 */
export function schemaForPostgresql(schema: string): string {
  const swaps = [
    ['provider = "sqlite"', 'provider = "postgresql"'],
    ['"../src/store/generated"', '"../../src/store/postgresql/generated"'],
  ] as const
  const derived = swaps.reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`prisma/schema.prisma must say ${from} once`)
    return text.replace(from, to)
  }, schema)
  return `// Written by npm run migration from ../schema.prisma, which is what to edit. The migrations beside it lead to this.\n${derived}`
}

/**
 * The engine's SQL with text ordered by its bytes: as SQLite orders it and as the model compares it, whatever the language of the database. Lists,
 * files and marks are in that order, and come out alike on both engines.
 */
export const orderedByBytes = (sql: string): string => sql.replace(/(" | TYPE )TEXT\b/g, '$1TEXT COLLATE "C"')
