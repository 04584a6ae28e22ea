import { Link } from 'wouter'
import { useList } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'

const shelves = [
  { kind: 'game', href: '/games' },
  { kind: 'quickSheet', href: '/quick-sheet' },
  { kind: 'design', href: '/designs' },
  { kind: 'comparison', href: '/trade-offs' },
] as const

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

function Shelf({ kind, href }: (typeof shelves)[number]) {
  const texts = words().start.shelves[kind]
  const list = useList(kind)
  const sorted = [...(list.data ?? [])].sort((a, b) => b.savedAt.localeCompare(a.savedAt))
  return (
    <section className="stack" aria-label={texts.title}>
      <h2>
        <Link href={href}>{texts.title}</Link>
      </h2>
      {list.error && <p role="alert">{list.error.message}</p>}
      {list.data?.length === 0 && <p className="soft">{texts.none}</p>}
      <ul className="shelf">
        {sorted.map((item) => (
          <li key={item.id}>
            <Link href={`${href}/${item.id}`}>{item.name}</Link>
            <span className="soft small">{words().start.saved(item.revision, moment(item.savedAt))}</span>
          </li>
        ))}
      </ul>
      <p>
        <Link href={href}>{texts.add}</Link>
      </p>
    </section>
  )
}
