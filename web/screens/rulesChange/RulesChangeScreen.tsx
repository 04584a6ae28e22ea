import { NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { useRevisions, useStored } from '../../data/documents.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { distinct } from '../documents/distinct.ts'
import { noteWords } from '../documents/noteWords.ts'
import { useReadingRecords } from '../quickSheet/useReadings.ts'
import { Consequences } from './Consequences.tsx'
import { ReadingList } from './ReadingList.tsx'
import '../start/start.css'

/** When the rules change, or may be read otherwise: which stored decisions flip. */
export default function RulesChangeScreen(props: { id: string }) {
  const texts = words().rulesChange
  const newest = useStored('game', props.id)
  const revisions = useRevisions('game', props.id)
  const readings = useReadingRecords().filter(({ body }) => body.game.id === props.id)
  const [chosen, setChosen] = useState<number | null>(null)
  const revision = chosen ?? newest.data?.revision
  const rules = useStored('game', revision === undefined ? null : props.id, revision)
  const error = newest.error ?? revisions.error ?? rules.error
  if (error)
    return (
      <Trouble
        title={texts.notLoaded}
        error={error}
        retry={() => {
          void newest.refetch()
          void revisions.refetch()
          void rules.refetch()
        }}
      />
    )
  if (!newest.data || !revisions.data || revision === undefined) return <Loading what={texts.loading} />
  const named = new Set(readings.map(({ body }) => body.game.revision))
  const own = distinct(revisions.data, named)
  const choices = own.map((entry) => {
    const reading = readings.find(({ body }) => body.game.revision === entry.revision)
    const label = reading
      ? texts.reading(reading.name, reading.body.rule, entry.revision)
      : entry.revision === newest.data.revision
        ? texts.newest(entry.revision)
        : texts.revision(entry.revision, entry.note ? noteWords(entry.note) : moment(entry.savedAt))
    return { value: String(entry.revision), label }
  })
  return (
    <div className="stack wide">
      <div className="stack">
        <p className="label">{newest.data.name}</p>
        <h1>{texts.title}</h1>
        <p>{texts.intro}</p>
        <Terms of={['reading', 'option', 'expectedPoints']} />
      </div>
      <section className="sheet stack" aria-label={texts.caption}>
        <NativeSelect
          label={texts.against}
          maw={480}
          value={String(revision)}
          data={choices}
          onChange={(event) => setChosen(Number(event.currentTarget.value))}
        />
        {rules.data ? <Consequences game={rules.data.body} /> : <Loading what={texts.loading} />}
      </section>
      <ReadingList game={props.id} readings={readings} revisions={own} />
    </div>
  )
}
