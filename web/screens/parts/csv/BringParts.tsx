import { Button, Checkbox, Textarea } from '@mantine/core'
import { useRef, useState } from 'react'
import { words } from '../../../words/catalogue.ts'
import { counted, useBring } from './useBring.ts'
import { VerdictTable } from './VerdictTable.tsx'

/** Parts from a pasted table or a file: looked at line by line first, saved when the person says so. */
export function BringParts() {
  const texts = words().parts.csv
  const bring = useBring()
  const input = useRef<HTMLInputElement>(null)
  return (
    <section className="sheet stack no-print" aria-labelledby="bring-parts">
      <h2 id="bring-parts">{texts.title}</h2>
      <p>{texts.help}</p>
      <Textarea
        label={texts.text}
        description={texts.textHelp}
        rows={5}
        spellCheck={false}
        value={bring.text}
        error={bring.trouble}
        onChange={(event) => bring.take(event.currentTarget.value)}
      />
      <div className="row">
        <Button loading={bring.busy} onClick={() => void bring.look()}>
          {texts.look}
        </Button>
        <input
          ref={input}
          type="file"
          accept=".csv,.txt,.tsv,text/csv,text/plain"
          className="visually-hidden"
          aria-label={texts.fileInput}
          tabIndex={-1}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file) void bring.readFile(file)
          }}
        />
        <Button variant="default" onClick={() => input.current?.click()}>
          {texts.file}
        </Button>
      </div>
      {bring.looked && (
        <>
          <VerdictTable {...bring.looked} />
          <Confirm key={bring.text} {...bring} />
        </>
      )}
    </section>
  )
}

/** What must be said before anything is saved: that revisions are meant, and that broken lines may stay out. */
function Confirm({ looked, busy, saveLines }: Pick<ReturnType<typeof useBring>, 'looked' | 'busy' | 'saveLines'>) {
  const texts = words().parts.csv
  const [revisions, setRevisions] = useState(false)
  const [goodOnly, setGoodOnly] = useState(false)
  if (!looked) return null
  const { good, bad, changes } = counted(looked.lines)
  if (looked.outcomes.size > 0) {
    const saved = [...looked.outcomes.values()].filter((outcome) => 'revision' in outcome).length
    return <p role="status">{texts.done(saved)}</p>
  }
  return (
    <div className="stack">
      {bad > 0 && (
        <p role="alert" className="loss">
          {texts.broken(bad)}
        </p>
      )}
      {good === 0 ? (
        <p role="status">{texts.nothing}</p>
      ) : (
        <>
          {bad > 0 && (
            <Checkbox
              label={texts.goodOnly(bad)}
              checked={goodOnly}
              onChange={(event) => setGoodOnly(event.currentTarget.checked)}
            />
          )}
          {changes > 0 && (
            <Checkbox
              label={texts.confirmChanges(changes)}
              checked={revisions}
              onChange={(event) => setRevisions(event.currentTarget.checked)}
            />
          )}
          <div>
            <Button
              disabled={(bad > 0 && !goodOnly) || (changes > 0 && !revisions)}
              loading={busy}
              onClick={() => void saveLines()}
            >
              {texts.save(good)}
            </Button>
          </div>
        </>
      )}
    </div>
  )
}
