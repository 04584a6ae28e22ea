import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { ReadingRecord } from '../../../src/model/documents/quickSheet.ts'
import type { RevisionSummary } from '../../../src/store/types.ts'
import { type Stored, useChanges } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { noteWords } from '../documents/noteWords.ts'

/** The readings of a game's rules: naming a revision, and taking a name away again. */
export function ReadingList(props: { game: string; readings: Stored<'reading'>[]; revisions: RevisionSummary[] }) {
  const { game, readings, revisions } = props
  const texts = words().rulesChange.readings
  const { save, remove } = useChanges()
  const [name, setName] = useState('')
  const [rule, setRule] = useState('')
  const [revision, setRevision] = useState<string | null>(null)
  const [missing, setMissing] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [removed, setRemoved] = useState<Stored<'reading'> | null>(null)
  const attempt = async (work: () => Promise<void>) => {
    setTrouble(null)
    try {
      await work()
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const make = () => {
    setMissing(name.trim() === '')
    if (name.trim() === '') return
    void attempt(async () => {
      const chosen = Number(revision ?? revisions[0]!.revision)
      const id = idFrom(name)
      const body: ReadingRecord = {
        format: 1,
        id,
        name: name.trim(),
        rule: rule.trim(),
        game: { id: game, revision: chosen },
      }
      await save.mutateAsync({ kind: 'reading', id, name: body.name, body, base: null })
      setName('')
      setRule('')
    })
  }
  const take = (reading: Stored<'reading'>, undo = false) =>
    attempt(async () => {
      await remove.mutateAsync({ kind: 'reading', id: reading.id, undo })
      setRemoved(undo ? null : reading)
    })
  return (
    <section className="sheet stack" aria-labelledby="readings-title">
      <h2 id="readings-title">{texts.title}</h2>
      <p>
        {texts.how} {texts.sheets}
      </p>
      <p>
        <Link href={`/games/${game}`}>{texts.edit}</Link>
      </p>
      {readings.length === 0 ? (
        <p className="soft">{texts.none}</p>
      ) : (
        <ul className="shelf">
          {readings.map((reading) => (
            <li key={reading.id}>
              <span>
                <strong>{reading.name}</strong>
                <br />
                <span className="soft small">{texts.line(reading.body.rule, reading.body.game.revision)}</span>
              </span>
              <Button
                size="compact-md"
                variant="subtle"
                aria-label={texts.removeOf(reading.name)}
                onClick={() => void take(reading)}
              >
                {texts.remove}
              </Button>
            </li>
          ))}
        </ul>
      )}
      {removed && (
        <p role="status">
          {texts.removed(removed.name)}{' '}
          <button type="button" className="opens" onClick={() => void take(removed, true)}>
            {texts.back}
          </button>
        </p>
      )}
      <form
        className="row"
        style={{ alignItems: 'end' }}
        onSubmit={(event) => {
          event.preventDefault()
          make()
        }}
      >
        <TextInput
          label={texts.name}
          w={340}
          maw="100%"
          value={name}
          error={missing ? texts.nameNeeded : null}
          onChange={(event) => setName(event.currentTarget.value)}
        />
        <TextInput label={texts.rule} w={120} value={rule} onChange={(event) => setRule(event.currentTarget.value)} />
        <NativeSelect
          label={texts.revision}
          value={revision ?? String(revisions[0]?.revision ?? '')}
          data={revisions.map((entry) => ({
            value: String(entry.revision),
            label: `${entry.revision} · ${entry.note ? noteWords(entry.note) : moment(entry.savedAt)}`,
          }))}
          onChange={(event) => setRevision(event.currentTarget.value)}
        />
        <Button type="submit" variant="default" loading={save.isPending}>
          {texts.make}
        </Button>
      </form>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </section>
  )
}
