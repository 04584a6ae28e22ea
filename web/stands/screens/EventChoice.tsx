import { useCallback, useEffect, useState } from 'react'
import { remember } from '../data/database.ts'
import { askEvents } from '../data/pack.ts'
import type { EventHead } from '../data/shapes.ts'
import { useStanding } from '../parts/means.tsx'
import { useWords } from '../words/catalogue.ts'

/** The events of the server, of which one is taken along; the only one at once. */
export function EventChoice(props: { chosen?: string | undefined; done?: () => void }) {
  const texts = useWords()
  const { database, refresh } = useStanding()
  const [events, setEvents] = useState<EventHead[] | 'asking' | 'unreachable'>('asking')
  const { chosen, done } = props

  const choose = useCallback(
    async (id: string) => {
      await remember(database, 'event', id)
      await refresh()
      done?.()
    },
    [database, refresh, done],
  )

  const ask = useCallback(async () => {
    setEvents('asking')
    const found = await askEvents(fetch, Date.now())
    if ('failed' in found) return setEvents('unreachable')
    const [only, another] = found.answer
    if (only && !another && chosen === undefined) await choose(only.id)
    setEvents(found.answer)
  }, [chosen, choose])

  useEffect(() => {
    void ask()
    addEventListener('online', ask)
    return () => removeEventListener('online', ask)
  }, [ask])

  if (events === 'asking') return <p className="soft">{texts.home.asking}</p>
  if (events === 'unreachable') {
    return (
      <div className="card">
        <p>{texts.home.unreachable}</p>
        <button type="button" onClick={ask}>
          {texts.app.retry}
        </button>
      </div>
    )
  }
  if (events.length === 0) return <p>{texts.home.noEvents}</p>
  return (
    <section className="list" aria-label={texts.home.chooseEvent}>
      <h2>{texts.home.chooseEvent}</h2>
      {events.map(({ id, name }) => (
        <button key={id} type="button" aria-pressed={id === chosen} onClick={() => void choose(id)}>
          {name}
        </button>
      ))}
    </section>
  )
}
