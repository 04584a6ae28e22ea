import { useState } from 'react'
import { useLocation } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import { getDocument } from '../../data/api.ts'
import { useChanges } from '../../data/documents.ts'
import { copyId, copyName } from '../../data/identity.ts'
import { renamed } from '../../data/renamed.ts'

/** What a list names a document by. */
export interface Listed {
  id: string
  name: string
}

/**
 * What a list of documents offers for each: a copy, which is opened, and taking it off the list. `removed`: the last one
 * taken off, which can be taken back; `trouble`: what the server said.
 */
export function useListActions(kind: DocumentKind, href: string) {
  const changes = useChanges()
  const [, go] = useLocation()
  const [removed, setRemoved] = useState<Listed | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const attempt = async (work: () => Promise<void>) => {
    setTrouble(null)
    try {
      await work()
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const duplicate = (item: Listed) =>
    attempt(async () => {
      const id = copyId(item.id)
      const name = copyName(item.name)
      const body = renamed(kind, (await getDocument(kind, item.id)).body, id, name)
      const outcome = await changes.save.mutateAsync({ kind, id, name, body, base: null })
      if ('saved' in outcome) go(`${href}/${id}`)
    })
  const remove = (item: Listed, undo = false) =>
    attempt(async () => {
      await changes.remove.mutateAsync({ kind, id: item.id, undo })
      setRemoved(undo ? null : item)
    })
  return { duplicate, remove, removed, trouble }
}
