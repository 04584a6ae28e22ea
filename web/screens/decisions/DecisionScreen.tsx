import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link, useSearchParams } from 'wouter'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { type Stored, useStored } from '../../data/documents.ts'
import { useDraft } from '../../data/draft.ts'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { useTexts } from '../../shell/fields/useTexts.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { useUndoKeys } from '../../shell/useUndoKeys.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { DecisionForm } from './DecisionForm.tsx'
import { DecisionPage } from './DecisionPage.tsx'
import { Recompute } from './Recompute.tsx'

/** A decision record: to be read, printed, written on, and computed again. */
export default function DecisionScreen(props: { id: string }) {
  const [search] = useSearchParams()
  const asked = Number(search.get('revision'))
  const revision = Number.isInteger(asked) && asked > 0 ? asked : undefined
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
  const draft = useDraft<DecisionRecord>({
    kind: 'decision',
    id: old ? `${stored.id}@${stored.revision}` : stored.id,
    revision: stored.revision,
    body: stored.body,
  })
  const { texts, setText, clear, unread } = useTexts()
  const [writing, setWriting] = useState(false)
  const undo = () => {
    clear()
    draft.undo()
  }
  const redo = () => {
    clear()
    draft.redo()
  }
  useUndoKeys(undo, redo)
  const edit = {
    document: draft.value,
    set: draft.set,
    pause: draft.pause,
    problems: [],
    texts,
    setText,
    readOnly: old,
  }
  return (
    <EditProvider value={edit}>
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
          <SaveBar
            kind="decision"
            stored={stored}
            draft={draft}
            old={old}
            href="/decisions"
            unread={unread}
            rename={(body, id, name) => ({ ...body, id, name })}
            onUndo={undo}
            onRedo={redo}
          />
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
