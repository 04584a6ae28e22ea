import { useEffect, useState, useSyncExternalStore } from 'react'
import { askChanged, type Changed as Change } from '../data/changed.ts'
import type { Kept } from '../data/database.ts'
import { useStanding } from '../parts/means.tsx'
import { number, useWords } from '../words/catalogue.ts'

/** As many of the newest records as are told of. */
const newest = 3

/** The newest own records of robots in matches that the server has. */
export const sentBy = (rows: readonly Kept[], of: { event: string; scout: string }): string[] =>
  rows
    .filter(({ state, scout, event, row }) => {
      const own = state === 'server' && scout === of.scout && event === of.event
      return own && row.kind === 'observation' && row.body.subject === 'robot' && row.body.match !== null
    })
    .slice(0, newest)
    .map(({ id }) => id)

/**
 * What the scout's last records changed about their robots, once the server has them. Without a connection there is nothing:
 * a number that may be old would promise what nobody knows.
 */
export function Changed({ rows, event, scout }: { rows: readonly Kept[]; event: string; scout: string }) {
  const texts = useWords().changed
  const { sender } = useStanding()
  const { doing } = useSyncExternalStore(sender.subscribe, sender.now)
  const [told, setTold] = useState<{ of: string; changes: Change[] } | null>(null)
  const of = sentBy(rows, { event, scout }).join()
  const known = told?.of === of
  useEffect(() => {
    // When everything is sent, the network is there.
    if (of === '' || known || doing !== 'idle') return
    let gone = false
    void askChanged(fetch, event, of.split(',')).then((changes) => {
      if (changes && !gone) setTold({ of, changes })
    })
    return () => {
      gone = true
    }
  }, [of, known, doing, event])
  if (!told || told.changes.length === 0 || of === '') return null
  return (
    <section className="card" aria-labelledby="changed">
      <h2 id="changed">{texts.title}</h2>
      <ul>
        {told.changes.map(({ record, team, without, with: now, matches }) => (
          <li key={record}>{texts.team(team, number(without, 1), number(now, 1), matches)}</li>
        ))}
      </ul>
      <p className="soft small">{texts.how}</p>
    </section>
  )
}
