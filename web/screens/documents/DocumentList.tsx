import { Button } from '@mantine/core'
import { type ReactNode, useState } from 'react'
import { Link, useLocation } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import type { DocumentSummary } from '../../../src/store/types.ts'
import { getDocument } from '../../data/api.ts'
import { useChanges, useList } from '../../data/documents.ts'
import { copyId, copyName } from '../../data/identity.ts'
import { renamed } from '../../data/renamed.ts'
import { Empty, Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { ImportFile } from './ImportFile.tsx'

/** All documents of a kind: open, copy, remove (and take that back), bring in from a file. */
export function DocumentList(props: {
  kind: DocumentKind
  href: string
  title: string
  intro: string
  noun: string
  children?: ReactNode
}) {
  const { kind, href, title, intro, noun } = props
  const texts = words().documents.list
  const list = useList(kind)
  const changes = useChanges()
  const [, go] = useLocation()
  const [removed, setRemoved] = useState<DocumentSummary | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const attempt = async (work: () => Promise<void>) => {
    setTrouble(null)
    try {
      await work()
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const duplicate = (item: DocumentSummary) =>
    attempt(async () => {
      const id = copyId(item.id)
      const name = copyName(item.name)
      const body = renamed(kind, (await getDocument(kind, item.id)).body, id, name)
      const outcome = await changes.save.mutateAsync({ kind, id, name, body, base: null })
      if ('saved' in outcome) go(`${href}/${id}`)
    })
  const remove = (item: DocumentSummary, undo = false) =>
    attempt(async () => {
      await changes.remove.mutateAsync({ kind, id: item.id, undo })
      setRemoved(undo ? null : item)
    })
  const sorted = [...(list.data ?? [])].sort((a, b) => a.name.localeCompare(b.name))
  return (
    <div className="stack wide">
      <div className="stack">
        <h1>{title}</h1>
        <p>{intro}</p>
      </div>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      {removed && (
        <p role="status">
          {texts.removed(removed.name)}{' '}
          <button type="button" className="opens" onClick={() => void remove(removed, true)}>
            {texts.back}
          </button>
        </p>
      )}
      {list.isPending ? (
        <Loading what={texts.loading(title)} />
      ) : list.error ? (
        <Trouble title={texts.notLoaded} error={list.error} retry={() => void list.refetch()} />
      ) : sorted.length === 0 ? (
        <Empty title={texts.none(noun)}>
          <p>{texts.begin}</p>
        </Empty>
      ) : (
        <ul className="shelf sheet">
          {sorted.map((item) => (
            <li key={item.id}>
              <span>
                <Link href={`${href}/${item.id}`}>
                  <strong>{item.name}</strong>
                </Link>
                <br />
                <span className="soft small">{texts.line(item.revision, moment(item.savedAt))}</span>
              </span>
              <span className="row">
                <Button
                  size="compact-md"
                  variant="default"
                  onClick={() => void duplicate(item)}
                  aria-label={texts.copyOf(item.name)}
                >
                  {texts.copy}
                </Button>
                <Button
                  size="compact-md"
                  variant="subtle"
                  onClick={() => void remove(item)}
                  aria-label={texts.removeOf(item.name)}
                >
                  {texts.remove}
                </Button>
              </span>
            </li>
          ))}
        </ul>
      )}
      {props.children}
      <ImportFile kind={kind} href={href} noun={noun} />
    </div>
  )
}
