import { useMemo } from 'react'
import { Link } from 'wouter'
import { DataTable } from '../../charts/Figure.tsx'
import { useAllStored, useList } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { plain, signedPoints } from '../../words/format.ts'

/** Rules that do not fit: where they go, and what has been adjusted by hand in this game's ways to play. */
export function NotModelled(props: { game: string }) {
  const texts = words().games.notModelled
  const list = useList('option')
  const options = useAllStored(
    'option',
    useMemo(() => (list.data ?? []).map(({ id }) => ({ id })), [list.data]),
  )
  const rows = (options.data ?? [])
    .filter(({ body }) => body.game === props.game)
    .flatMap(({ body, name }) =>
      body.option.adjust.map(({ label, points, rankingPoints }) => [
        label,
        signedPoints(points),
        plain(rankingPoints, 2),
        name,
      ]),
    )
  return (
    <section className="sheet stack" aria-labelledby="not-modelled-title">
      <h2 id="not-modelled-title">{texts.title}</h2>
      <p>{texts.help}</p>
      {rows.length > 0 ? (
        <div className="scroll">
          <DataTable caption={texts.table} table={{ head: texts.head, rows }} showCaption />
        </div>
      ) : (
        <p className="soft">{texts.none}</p>
      )}
      <p>
        <Link href="/designs">{texts.designs}</Link>
      </p>
    </section>
  )
}
