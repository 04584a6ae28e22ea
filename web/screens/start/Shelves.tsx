import { Link } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import { useList } from '../../data/documents.ts'
import { moment } from '../../words/format.ts'

const shelves: { kind: DocumentKind; title: string; href: string; none: string; add: string }[] = [
  { kind: 'game', title: 'Games', href: '/games', none: 'No game yet.', add: 'Enter your own game' },
  { kind: 'design', title: 'Designs', href: '/designs', none: 'No design yet.', add: 'Sketch a robot' },
  {
    kind: 'comparison',
    title: 'Trade-offs',
    href: '/trade-offs',
    none: 'No trade-off yet.',
    add: 'Compare ways to play',
  },
]

/** What is stored, newest first. */
export function Shelves() {
  return (
    <div className="columns">
      {shelves.map((shelf) => (
        <Shelf key={shelf.kind} {...shelf} />
      ))}
    </div>
  )
}

function Shelf(props: (typeof shelves)[number]) {
  const list = useList(props.kind)
  const sorted = [...(list.data ?? [])].sort((a, b) => b.savedAt.localeCompare(a.savedAt))
  return (
    <section className="stack" aria-label={props.title}>
      <h2>
        <Link href={props.href}>{props.title}</Link>
      </h2>
      {list.error && <p role="alert">{list.error.message}</p>}
      {list.data?.length === 0 && <p className="soft">{props.none}</p>}
      <ul className="shelf">
        {sorted.map((item) => (
          <li key={item.id}>
            <Link href={`${props.href}/${item.id}`}>{item.name}</Link>
            <span className="soft small">
              revision {item.revision}, {moment(item.savedAt)}
            </span>
          </li>
        ))}
      </ul>
      <p>
        <Link href={props.href}>{props.add}</Link>
      </p>
    </section>
  )
}
