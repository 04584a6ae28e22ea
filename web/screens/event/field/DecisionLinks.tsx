import { Link } from 'wouter'
import { useAllStored, useList } from '../../../data/documents.ts'
import { words } from '../../../words/catalogue.ts'

/** Records of decisions that this design was part of: each can be computed again with the copy in its place. */
export function DecisionLinks({ design, copy }: { design: string; copy: string | null }) {
  const texts = words().fieldCheck.back
  const list = useList('decision')
  const all = useAllStored('decision', copy === null ? [] : (list.data ?? []))
  if (copy === null || !all.data) return null
  const own = all.data.filter(({ body }) => body.snapshot.options.some(({ robot }) => robot.id === design))
  if (own.length === 0) return <p className="soft">{texts.noDecision}</p>
  return (
    <div>
      <p>{texts.sameToday}</p>
      <ul>
        {own.map(({ id, name }) => (
          <li key={id}>
            <Link href={`/decisions/${id}?field=${encodeURIComponent(copy)}`}>{name}</Link>
          </li>
        ))}
      </ul>
    </div>
  )
}
