import { useCallback, useMemo } from 'react'
import { useSearchParams } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import type { Problem } from '../../../src/model/errors.ts'
import type { Bodies, Stored } from '../../data/documents.ts'
import { type Draft, type Follow, useDraft } from '../../data/draft.ts'
import { languageOfTexts } from '../../data/textLanguage.ts'
import type { Edit } from '../../shell/fields/EditContext.tsx'
import { useTexts } from '../../shell/fields/useTexts.ts'
import { useUndoKeys } from '../../shell/useUndoKeys.ts'

/** A stored document under edit, or an older revision of it that is only looked at. */
export interface Editing<K extends DocumentKind> {
  kind: K
  stored: Stored<K>
  draft: Draft<Bodies[K]>
  /** An older revision is shown, which can be looked at and restored. */
  old: boolean
  /** What stands in fields and is not a value: saving waits for it. */
  unread: string[]
  undo(): void
  redo(): void
  /** What the fields share, with what is wrong with the document; the same function while neither values nor texts change. */
  fields(problems: readonly Problem[]): Edit
}

/** The revision that the address asks for; undefined: the newest. */
export function useRevisionAsked(): number | undefined {
  const [search] = useSearchParams()
  const asked = Number(search.get('revision'))
  return Number.isInteger(asked) && asked > 0 ? asked : undefined
}

/**
 * The edit of a document: kept in this browser until it is saved, undone and redone, with what is typed and not read yet.
 * `keys`: whether the keys for undo act on it; in a panel over another document they stay with that one.
 */
export function useEditing<K extends DocumentKind>(of: {
  kind: K
  stored: Stored<K>
  old?: boolean
  keys?: boolean
  /** What follows every edit in the same step of undo. */
  follow?: Follow<Bodies[K]>
}): Editing<K> {
  const { kind, stored, old = false, keys = true, follow } = of
  const draft = useDraft<Bodies[K]>({
    kind,
    id: old ? `${stored.id}@${stored.revision}` : stored.id,
    revision: stored.revision,
    body: stored.body,
    follow,
  })
  const { texts, setText, clear, unread } = useTexts()
  const undo = () => {
    clear()
    draft.undo()
  }
  const redo = () => {
    clear()
    draft.redo()
  }
  useUndoKeys({ undo, redo, on: keys && !old })
  const language = useMemo(() => languageOfTexts(stored), [stored])
  const { value, set, pause } = draft
  const fields = useCallback(
    (problems: readonly Problem[]): Edit => ({
      document: value,
      set,
      pause,
      problems,
      texts,
      setText,
      readOnly: old,
      language,
    }),
    [value, set, pause, texts, setText, old, language],
  )
  return { kind, stored, draft, old, unread, undo, redo, fields }
}
