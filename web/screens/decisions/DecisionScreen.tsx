import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import { type Stored, useStored } from '../../data/documents.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing, useRevisionAsked } from '../documents/useEditing.ts'
import { DecisionForm } from './DecisionForm.tsx'
import { DecisionPage } from './DecisionPage.tsx'
import { Recompute } from './Recompute.tsx'

/** A decision record: to be read, printed, written on, and computed again. */
export default function DecisionScreen(props: { id: string }) {
  const revision = useRevisionAsked()
  const stored = useStored('decision', props.id, revision)
  if (stored.isPending) return <Loading what="the decision record" />
  if (stored.error)
    return (
      <Trouble
        title="The decision record could not be loaded"
        error={stored.error}
        retry={() => void stored.refetch()}
      />
    )
  return <Opened key={revision ?? 'newest'} stored={stored.data} old={revision !== undefined} />
}

function Opened(props: { stored: Stored<'decision'>; old: boolean }) {
  const { stored, old } = props
  const editing = useEditing({ kind: 'decision', stored, old })
  const { draft } = editing
  const [writing, setWriting] = useState(false)
  return (
    <EditProvider value={editing.fields([])}>
      <div className="stack wide">
        <div className="row spread no-print">
          <div className="row">
            <Button onClick={() => window.print()}>Print</Button>
            {!old && (
              <Button variant="default" aria-pressed={writing} onClick={() => setWriting(!writing)}>
                {writing ? 'Read' : 'Write on it'}
              </Button>
            )}
            <ExportFile name={draft.value.name} body={draft.value} />
            <Link href={`/trade-offs/${draft.value.comparison.id}`}>To the trade-off</Link>
          </div>
          <SaveBar of={editing} href="/decisions" />
        </div>
        {writing && !old ? (
          <DecisionForm decision={draft.value} />
        ) : (
          <DecisionPage decision={draft.value} revision={draft.base} dirty={draft.dirty} />
        )}
        <Recompute decision={draft.value} />
      </div>
    </EditProvider>
  )
}
