import { useEffect, useState } from 'react'
import { type IdTable, idTable, noTable } from '../../../src/model/scouting/code/index.ts'
import type { Row } from '../../../src/model/scouting/types.ts'
import { CodeShown } from '../../codes/CodeShown.tsx'
import { fitsACode, shownRows } from '../../codes/rows.ts'
import type { Shown } from '../../codes/shown.ts'
import type { Kept, StandsDatabase } from '../data/database.ts'
import { onlyHere } from '../data/outbox.ts'
import { Choice } from '../parts/Choice.tsx'
import { useKnown, useOutbox, useStanding } from '../parts/means.tsx'
import { Screen } from '../parts/Screen.tsx'
import { useMoreWords } from '../words/more.ts'

/** The tables of the games that rows were made with, as far as the phone still has those. */
async function tablesFor({ games }: StandsDatabase, game: string, rows: readonly Row[]): Promise<Map<number, IdTable>> {
  const revisions = new Set(rows.flatMap((row) => (row.kind === 'observation' ? [row.body.game] : [])))
  const tables = new Map<number, IdTable>()
  for (const revision of revisions) {
    const found = await games.get([game, revision])
    if (found) tables.set(revision, idTable(found.body))
  }
  return tables
}

/** What this phone has, as a code for the lead's camera: one that stands still, or a running sequence. */
export default function ShowCodes() {
  const { pit } = useMoreWords()
  const texts = pit.show
  const rows = useOutbox()
  const known = useKnown()
  const pack = known?.pack?.pack
  return (
    <Screen title={texts.title}>
      {rows &&
        known &&
        (pack ? <Codes rows={rows} event={pack.event.id} game={pack.event.game} /> : <p>{pit.noEvent}</p>)}
    </Screen>
  )
}

function Codes(props: { rows: readonly Kept[]; event: string; game: string }) {
  const { event, game } = props
  const { pit, codes } = useMoreWords()
  const texts = pit.show
  const { database } = useStanding()
  const [which, setWhich] = useState<'waiting' | 'all'>('waiting')
  const [shown, setShown] = useState<{ shown: Shown; count: number; missing: boolean } | null>(null)
  const ofEvent = props.rows.filter((kept) => kept.event === event && (which === 'all' || onlyHere(kept)))
  const fitting = ofEvent.filter(({ row }) => fitsACode(row))
  const key = fitting.map(({ id }) => id).join()

  // biome-ignore lint/correctness/useExhaustiveDependencies: rows are told apart by their ids, and never change
  useEffect(() => {
    let over = false
    const make = async () => {
      const rows = fitting.map(({ row }) => row)
      const tables = await tablesFor(database, game, rows)
      const tableOf = (row: Row) => (row.kind === 'observation' ? tables.get(row.body.game) : undefined)
      const missing = rows.some((row) => row.kind === 'observation' && !tableOf(row))
      const made = shownRows(rows, (row) => tableOf(row) ?? noTable)
      if (!over) setShown({ shown: made, count: rows.length, missing })
    }
    if (fitting.length > 0) void make()
    else setShown(null)
    return () => {
      over = true
    }
  }, [key, game, database])

  const photos = ofEvent.length - fitting.length
  return (
    <>
      <p>{texts.intro}</p>
      <Choice
        label={texts.which}
        value={which}
        choose={setWhich}
        options={(['waiting', 'all'] as const).map((value) => ({ value, name: texts[value] }))}
      />
      {shown ? (
        <CodeShown key={key} shown={shown.shown} label={texts.label(shown.count)} texts={codes} />
      ) : (
        <p role="status">{texts.none}</p>
      )}
      {shown?.missing && <p className="notice">{texts.noGame}</p>}
      {photos > 0 && <p className="notice plain">{texts.photos(photos)}</p>}
      <p className="soft small">{texts.stays}</p>
    </>
  )
}
