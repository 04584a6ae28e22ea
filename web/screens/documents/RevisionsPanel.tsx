import { Button } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import type { StoredDocument } from '../../../src/store/types.ts'
import { differences } from '../../data/difference.ts'
import { useChanges, useRevisions, useStored } from '../../data/documents.ts'
import { Panel } from '../../shell/Panel.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { DifferenceTable } from './DifferenceTable.tsx'
import { noteWords } from './noteWords.ts'

/** All revisions of a document: look at one, compare it with what is on the screen, make it the newest again. */
export function RevisionsPanel(props: {
  kind: DocumentKind
  id: string
  href: string | null
  /** What is on the screen. */
  shown: unknown
  open: boolean
  onClose(): void
  /** The newest revision that was seen; without it nothing can be restored. */
  newest?: number
  onRestored?(document: StoredDocument): void
}) {
  const { kind, id, href, newest } = props
  const texts = words().documents.revisions
  const list = useRevisions(kind, id, props.open)
  const changes = useChanges()
  const [compared, setCompared] = useState<number | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const restore = async (revision: number) => {
    setTrouble(null)
    try {
      const outcome = await changes.restore.mutateAsync({ kind, id, revision, base: newest! })
      if ('saved' in outcome) {
        props.onRestored?.(outcome.saved)
        props.onClose()
      } else setTrouble(texts.between)
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error))
    }
  }
  return (
    <Panel title={texts.title} open={props.open} onClose={props.onClose} side>
      {list.isPending && <Loading what={texts.loading} />}
      {list.error && <Trouble title={texts.notLoaded} error={list.error} retry={() => void list.refetch()} />}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      <ol className="shelf" reversed>
        {list.data?.map((entry) => (
          <li key={entry.revision}>
            <span>
              <strong>{entry.revision}</strong> · {entry.name}
              <br />
              <span className="soft small">
                {moment(entry.savedAt)}
                {entry.note ? ` · ${noteWords(entry.note)}` : ''}
              </span>
            </span>
            <span className="row">
              {href !== null && (
                <Link href={`${href}/${id}?revision=${entry.revision}`} onClick={props.onClose}>
                  {texts.open}
                </Link>
              )}
              <Button
                size="compact-sm"
                variant="default"
                aria-expanded={compared === entry.revision}
                onClick={() => setCompared(compared === entry.revision ? null : entry.revision)}
              >
                {texts.compare}
              </Button>
              {newest !== undefined && entry.revision !== newest && (
                <Button size="compact-sm" variant="default" onClick={() => void restore(entry.revision)}>
                  {texts.restore}
                </Button>
              )}
            </span>
            {compared === entry.revision && (
              <div style={{ flexBasis: '100%' }}>
                <Comparison {...{ kind, id }} revision={entry.revision} shown={props.shown} />
              </div>
            )}
          </li>
        ))}
      </ol>
    </Panel>
  )
}

function Comparison(props: { kind: DocumentKind; id: string; revision: number; shown: unknown }) {
  const texts = words().documents.revisions
  const stored = useStored(props.kind, props.id, props.revision)
  if (stored.error) return <p role="alert">{stored.error.message}</p>
  if (!stored.data) return <Loading what={texts.loadingOne} />
  return (
    <DifferenceTable
      caption={texts.against(props.revision)}
      head={[texts.revision(props.revision), texts.shown]}
      rows={differences(stored.data.body, props.shown)}
    />
  )
}
