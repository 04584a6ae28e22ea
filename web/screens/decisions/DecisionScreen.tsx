import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import { type Stored, useStored } from '../../data/documents.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { words } from '../../words/catalogue.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing, useRevisionAsked } from '../documents/useEditing.ts'
import { DecisionForm } from './DecisionForm.tsx'
import { DecisionPage } from './DecisionPage.tsx'
import { missingFrom } from './missing.ts'
import { Recompute } from './Recompute.tsx'

/** A decision record: to be read, printed, written on, and computed again. */
export default function DecisionScreen(props: { id: string }) {
  const revision = useRevisionAsked()
  const stored = useStored('decision', props.id, revision)
  const texts = words().decisions
  if (stored.isPending) return <Loading what={texts.loading} />
  if (stored.error) return <Trouble title={texts.notLoaded} error={stored.error} retry={() => void stored.refetch()} />
  return <Opened key={revision ?? 'newest'} stored={stored.data} old={revision !== undefined} />
}

function Opened(props: { stored: Stored<'decision'>; old: boolean }) {
  const { stored, old } = props
  const editing = useEditing({ kind: 'decision', stored, old })
  const { draft } = editing
  const [writing, setWriting] = useState(false)
  const texts = words().decisions
  return (
    <EditProvider value={editing.fields([])}>
      <div className="stack wide">
        <div className="row spread no-print">
          <div className="row">
            <Button onClick={() => window.print()}>{texts.print}</Button>
            {!old && (
              <Button variant="default" aria-pressed={writing} onClick={() => setWriting(!writing)}>
                {writing ? texts.read : texts.write}
              </Button>
            )}
            <ExportFile name={draft.value.name} body={draft.value} />
            <Link href={`/trade-offs/${draft.value.comparison.id}`}>{texts.toTradeOff}</Link>
          </div>
          <SaveBar of={editing} href="/decisions" />
        </div>
        <Terms of={['option', 'expectedPoints', 'belief', 'breakEven']} />
        {!old && <Missing sentences={missingFrom(draft.value)} onWrite={writing ? null : () => setWriting(true)} />}
        {writing && !old ? (
          <DecisionForm decision={draft.value} />
        ) : (
          <DecisionPage decision={draft.value} revision={draft.base} dirty={draft.dirty} />
        )}
        <Recompute decision={draft.value} revision={draft.base} />
      </div>
    </EditProvider>
  )
}

/** What the record still lacks, while it lacks something; not on paper. */
function Missing(props: { sentences: string[]; onWrite: (() => void) | null }) {
  if (props.sentences.length === 0) return null
  return (
    <section className="no-print missing" aria-labelledby="missing-title">
      <h2 id="missing-title">{words().decisions.missing.title}</h2>
      <ul>
        {props.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {props.onWrite && (
        <button type="button" className="opens" onClick={props.onWrite}>
          {words().decisions.missing.write}
        </button>
      )}
    </section>
  )
}
