import { Button } from '@mantine/core'
import type { ReactNode } from 'react'
import { Link } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import { useList } from '../../data/documents.ts'
import { Empty, Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { ImportFile } from './ImportFile.tsx'
import { OfGame } from './OfGame.tsx'
import { useListActions } from './useListActions.ts'

/** All documents of a kind: open, copy, remove (and take that back), bring in from a file. */
export function DocumentList(props: {
  kind: DocumentKind
  href: string
  title: string
  intro: string
  noun: string
  /** How one comes about, where not by a form below. */
  begin?: string
  /** Its files come in by what stands among the children. */
  ownFiles?: boolean
  children?: ReactNode
}) {
  const { kind, href, title, intro, noun } = props
  const texts = words().documents.list
  const list = useList(kind)
  const games = useList('game')
  // Without a game nothing else can be begun, and the forms for it are not there.
  const withoutGame = kind !== 'game' && kind !== 'event' && games.data?.length === 0
  const again = () => {
    void list.refetch()
    // The forms below need them.
    void games.refetch()
  }
  const { duplicate, remove, removed, trouble } = useListActions(kind, href)
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
        <Trouble title={texts.notLoaded} error={list.error} retry={again} />
      ) : sorted.length === 0 ? (
        <Empty title={texts.none(noun)}>
          {withoutGame ? (
            <p>
              {texts.noGame} <Link href="/games">{texts.toGames}</Link>
            </p>
          ) : (
            <p>{props.begin ?? texts.begin}</p>
          )}
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
                <span className="soft small">
                  {texts.line(item.revision, moment(item.savedAt))}
                  <OfGame kind={kind} id={item.id} revision={item.revision} />
                </span>
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
      {!props.ownFiles && <ImportFile kind={kind} href={href} noun={noun} />}
    </div>
  )
}
