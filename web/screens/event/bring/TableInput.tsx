import { Button, NativeSelect, Textarea } from '@mantine/core'
import { useRef } from 'react'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import type { useTable } from './useTable.ts'

/** Where a table is pasted or a file is read, and which of its headings means what. */
export function TableInput(props: {
  label: string
  help: string
  of: ReturnType<typeof useTable>
  known: readonly string[]
  needed: readonly string[]
  busy: boolean
}) {
  const texts = words().event.bring
  const { of } = props
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <Textarea
        label={props.label}
        description={props.help}
        rows={5}
        spellCheck={false}
        value={of.text}
        error={of.trouble}
        onChange={(event) => of.take(event.currentTarget.value)}
      />
      <div className="row">
        <Button loading={props.busy} onClick={() => void of.read(of.text)}>
          {texts.look}
        </Button>
        <input
          ref={input}
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          className="visually-hidden"
          aria-label={texts.fileInput(props.label)}
          tabIndex={-1}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file) void of.readFile(file)
          }}
        />
        <Button variant="default" onClick={() => input.current?.click()}>
          {texts.file}
        </Button>
      </div>
      {of.table && <Columns {...props} headings={of.table.headings} />}
    </>
  )
}

function Columns(props: Parameters<typeof TableInput>[0] & { headings: readonly string[] }) {
  const texts = words().event.bring
  const { of, headings, needed } = props
  const missing = needed.filter((column) => of.columns[column] === undefined)
  return (
    <details open={missing.length > 0}>
      <summary>{texts.columns}</summary>
      {missing.length > 0 ? (
        <p role="alert" className="loss">
          {texts.noHeadings(listed(missing))}
        </p>
      ) : (
        <p className="soft">{texts.columnsHelp}</p>
      )}
      <div className="slot-fields">
        {props.known.map((column) => (
          <NativeSelect
            key={column}
            label={column}
            value={String(of.columns[column] ?? '')}
            error={missing.includes(column) ? texts.needed : null}
            data={[
              { value: '', label: texts.noColumn },
              ...headings.map((heading, place) => ({ value: String(place), label: heading || `${place + 1}` })),
            ]}
            onChange={(event) => {
              const { value } = event.currentTarget
              of.choose(column, value === '' ? null : Number(value))
            }}
          />
        ))}
      </div>
    </details>
  )
}
