import { Button } from '@mantine/core'
import { useState } from 'react'
import { Panel } from '../../shell/Panel.tsx'
import { TableFiles } from '../../shell/TableDownload.tsx'
import { tablesOf } from '../../tables/fromPage.ts'
import type { TableData } from '../../tables/table.ts'
import { words } from '../../words/catalogue.ts'

/** Every table of the screen as a file, with its numbers as they were computed. */
export function TablesButton() {
  const [tables, setTables] = useState<TableData[] | null>(null)
  const texts = words().tables
  return (
    <>
      <Button variant="default" onClick={() => setTables(tablesOf(document.querySelector('main') ?? document.body))}>
        {texts.all}
      </Button>
      <Panel title={texts.all} open={tables !== null} onClose={() => setTables(null)} side>
        <p>{texts.allHow}</p>
        {tables?.length === 0 && <p className="soft">{texts.noTable}</p>}
        <ul className="shelf">
          {tables?.map((table, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list is read once, and two tables can have one title
            <li key={index}>
              <div>
                <strong>{table.title}</strong>{' '}
                <span className="soft small">{texts.size(table.rows.length, table.columns.length)}</span>
                <TableFiles title={table.title} table={() => table} />
              </div>
            </li>
          ))}
        </ul>
      </Panel>
    </>
  )
}
