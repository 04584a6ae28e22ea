import { Button } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import type { Problem } from '../../../src/model/errors.ts'
import type { SaveOutcome, StoredDocument } from '../../../src/store/types.ts'
import { problemsOf } from '../../data/api.ts'
import { type Bodies, useChanges } from '../../data/documents.ts'
import { copyId, copyName } from '../../data/identity.ts'
import { renamed } from '../../data/renamed.ts'
import { keysOf } from '../../shell/keyNames.ts'
import { shortcuts } from '../../shell/shortcuts.ts'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { ConflictPanel } from './ConflictPanel.tsx'
import { RevisionsPanel } from './RevisionsPanel.tsx'
import { TablesButton } from './TablesPanel.tsx'
import type { Editing } from './useEditing.ts'

interface Named {
  name: string
}

const nameOf = (body: unknown): string => {
  const parts = body as { name?: string; robot?: Named; option?: Named; part?: Named }
  return parts.name ?? parts.robot?.name ?? parts.option?.name ?? parts.part?.name ?? ''
}

/** Undo, redo, save, revisions: the same on every document. Nothing typed is lost, whatever the server says. */
export function SaveBar<K extends DocumentKind>(props: {
  of: Editing<K>
  /** Where documents of this kind live; null where they have no screen of their own. */
  href: string | null
  onCopied?(id: string): void
}) {
  const { href } = props
  const texts = words().documents.save
  const { kind, stored, draft, old, unread } = props.of
  const [, go] = useLocation()
  const changes = useChanges()
  const [conflict, setConflict] = useState<{ current: StoredDocument; base: StoredDocument | null } | null>(null)
  const [showRevisions, setShowRevisions] = useState(false)
  const [said, setSaid] = useState<string | null>(null)
  const [copying, setCopying] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])

  const send = async (body: Bodies[K], base: number | null, id = stored.id) => {
    setSaid(null)
    setProblems([])
    try {
      const outcome: SaveOutcome = await changes.save.mutateAsync({ kind, id, name: nameOf(body), body, base })
      if ('conflict' in outcome) setConflict(outcome.conflict)
      else {
        setConflict(null)
        if (id === stored.id) {
          draft.rebase(outcome.saved.revision, outcome.saved.body as Bodies[K])
          setSaid(texts.saved(outcome.saved.revision))
        } else {
          draft.discard()
          if (href !== null) go(`${href}/${id}`)
          props.onCopied?.(id)
        }
      }
    } catch (error) {
      setSaid(error instanceof Error ? error.message : String(error))
      setProblems(problemsOf(error))
    }
  }
  const saveCopy = () => {
    const id = copyId(stored.id)
    setCopying(true)
    return send(renamed(kind, draft.value, id, copyName(nameOf(draft.value))) as Bodies[K], null, id).finally(() =>
      setCopying(false),
    )
  }

  if (old)
    return (
      <div className="row">
        <p>{texts.old(stored.revision, moment(stored.savedAt))}</p>
        <Button variant="default" onClick={() => go(`${href ?? ''}/${stored.id}`)}>
          {texts.newest}
        </Button>
        <Button variant="default" onClick={() => setShowRevisions(true)}>
          {texts.revisions}
        </Button>
        <RevisionsPanel
          {...{ kind, href }}
          id={stored.id}
          shown={stored.body}
          open={showRevisions}
          onClose={() => setShowRevisions(false)}
        />
      </div>
    )

  return (
    <div className="stack" style={{ gap: '0.35rem' }}>
      <div className="row no-print">
        <Button
          variant="default"
          disabled={!draft.canUndo}
          onClick={props.of.undo}
          aria-keyshortcuts={shortcuts.undo.keys[0]}
          title={keysOf('undo')}
        >
          {texts.undo}
        </Button>
        <Button
          variant="default"
          disabled={!draft.canRedo}
          onClick={props.of.redo}
          aria-keyshortcuts={shortcuts.redo.keys[0]}
          title={keysOf('redo')}
        >
          {texts.redo}
        </Button>
        <Button variant="default" onClick={() => setShowRevisions(true)}>
          {texts.revisions}
        </Button>
        {href !== null && <TablesButton />}
        <Button variant="default" loading={copying} onClick={() => void saveCopy()}>
          {texts.copy}
        </Button>
        <Button
          disabled={!draft.dirty || unread.length > 0}
          loading={changes.save.isPending && !copying}
          aria-keyshortcuts={shortcuts.save.keys[0]}
          onClick={() => void send(draft.value, draft.base)}
        >
          {texts.save}
        </Button>
      </div>
      <p className="small soft" role="status">
        {said ??
          (unread.length > 0
            ? texts.unread(unread.length)
            : draft.foundFrom
              ? texts.found(moment(draft.foundFrom))
              : draft.dirty
                ? texts.dirty(draft.base)
                : texts.savedBefore(draft.base))}
        {draft.dirty && (
          <>
            {' '}
            <button type="button" className="opens" onClick={draft.discard}>
              {texts.discard}
            </button>
          </>
        )}
      </p>
      {problems.length > 0 && (
        <ul role="alert" className="loss small">
          {problems.map((problem) => (
            <li key={`${problem.path.join('/')}${problem.message}`}>{problem.message}</li>
          ))}
        </ul>
      )}
      <RevisionsPanel
        {...{ kind, href }}
        id={stored.id}
        shown={draft.value}
        open={showRevisions}
        onClose={() => setShowRevisions(false)}
        newest={draft.base}
        onRestored={(document) => {
          draft.rebase(document.revision, document.body as Bodies[K])
          setSaid(texts.restored(document.revision))
        }}
      />
      {conflict && (
        <ConflictPanel
          conflict={conflict}
          mine={draft.value}
          onClose={() => setConflict(null)}
          onMerge={(merged) => {
            draft.replace(merged as Bodies[K])
            return send(merged as Bodies[K], conflict.current.revision)
          }}
          onTakeTheirs={() => {
            draft.rebase(conflict.current.revision, conflict.current.body as Bodies[K])
            setConflict(null)
            setSaid(texts.theirs(conflict.current.revision))
          }}
          onCopy={saveCopy}
        />
      )}
    </div>
  )
}
