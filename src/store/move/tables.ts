/** A table as the schema says it is. */
export interface Table {
  /** The model's name, which is the table's. */
  name: string
  /** Its columns but the one that the database counts up by itself. */
  columns: string[]
  /** The columns of its key. */
  key: string[]
  /** That column, which orders the rows; null: there is none. */
  counted: string | null
  /** Tables that its rows point to. */
  needs: string[]
}

const scalars = new Set(['String', 'Int', 'Float', 'Boolean', 'DateTime'])

/** The tables of a schema, those that others point to before those others; so that whoever adds a table adds it here. */
export function tablesOf(schema: string): Table[] {
  const all = [...schema.matchAll(/^model (\w+) \{\n(.*?)^\}/gms)].map(([, name, body]) => tableOf(name!, body!))
  const placed: Table[] = []
  while (placed.length < all.length) {
    const has = (name: string) => placed.some((table) => table.name === name)
    const next = all.find((table) => !has(table.name) && table.needs.every(has))
    if (!next) throw new Error('Tables point to each other in a circle')
    placed.push(next)
  }
  return placed
}

function tableOf(name: string, body: string): Table {
  const fields = body.split('\n').flatMap((line) => {
    const [, field, type, , rest] = /^ {2}(\w+)\s+(\w+)(\?|\[\])?(.*)$/.exec(line) ?? []
    return field && type && rest !== undefined ? [{ field, type, rest }] : []
  })
  const columns = fields.filter(({ type }) => scalars.has(type))
  const counted = columns.find(({ rest }) => rest.includes('autoincrement()'))?.field ?? null
  const together = /^ {2}@@id\(\[([^\]]+)\]\)/m.exec(body)?.[1]?.split(', ')
  return {
    name,
    columns: columns.map(({ field }) => field).filter((field) => field !== counted),
    key: together ?? columns.filter(({ rest }) => /@id\b/.test(rest)).map(({ field }) => field),
    counted,
    needs: fields.filter(({ rest }) => rest.includes('@relation(fields:')).map(({ type }) => type),
  }
}
