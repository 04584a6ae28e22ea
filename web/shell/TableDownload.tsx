import { Button, Checkbox } from '@mantine/core'
import { useState } from 'react'
import { writeCsv } from '../tables/csv.ts'
import { dataPackage } from '../tables/dataPackage.ts'
import { saveFile } from '../tables/save.ts'
import type { TableData } from '../tables/table.ts'
import { words } from '../words/catalogue.ts'
import './download.css'

/** Offers the table above it as CSV, with the description of its columns beside. `table` is asked when it is wanted. */
export function TableDownload(props: { title: string; table: () => TableData }) {
  const [open, setOpen] = useState(false)
  const texts = words().tables
  return (
    <details className="no-print small download" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary aria-label={texts.downloadOf(props.title)}>{texts.download}</summary>
      {open && <TableFiles {...props} explained />}
    </details>
  )
}

/** The two files of a table, and whether the first begins with a byte-order mark. */
export function TableFiles(props: { title: string; table: () => TableData; explained?: boolean }) {
  const [mark, setMark] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const texts = words().tables
  const csv = async () => {
    setTrouble(null)
    try {
      const table = props.table()
      saveFile(`${table.name}.csv`, await writeCsv(table, { mark }), 'text/csv;charset=utf-8')
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const description = () => {
    const text = JSON.stringify(dataPackage(props.table(), new Date().toISOString()), null, 2)
    saveFile('datapackage.json', `${text}\n`, 'application/json')
  }
  return (
    <div className="stack">
      <div className="row">
        <Button size="compact-md" variant="default" aria-label={texts.csvOf(props.title)} onClick={() => void csv()}>
          {texts.csv}
        </Button>
        <Button size="compact-md" variant="default" aria-label={texts.descriptionOf(props.title)} onClick={description}>
          {texts.description}
        </Button>
        <Checkbox label={texts.mark} checked={mark} onChange={(event) => setMark(event.currentTarget.checked)} />
      </div>
      {props.explained && <p className="soft">{texts.how}</p>}
      {trouble && <p role="alert">{trouble}</p>}
    </div>
  )
}
