import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import type { EventRecord } from '../../../src/model/scouting/types.ts'
import { useChanges, useList } from '../../data/documents.ts'
import { idFrom } from '../../data/identity.ts'
import { words } from '../../words/catalogue.ts'

/** An event from its name, its game and its day; teams and schedule come on its own page. */
export function NewEvent() {
  const texts = words().event.fresh
  const games = useList('game')
  const { save } = useChanges()
  const [, go] = useLocation()
  const [name, setName] = useState('')
  const [chosen, setChosen] = useState<string | null>(null)
  const [startsOn, setStartsOn] = useState('')
  const [tried, setTried] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const game = chosen ?? games.data?.[0]?.id
  const begin = async () => {
    setTried(true)
    if (name.trim() === '' || game === undefined) return
    setTrouble(null)
    try {
      const id = idFrom(name)
      const day = startsOn === '' ? {} : { startsOn }
      const body: EventRecord = { format: 1, id, name: name.trim(), game, teams: [], ...day }
      const outcome = await save.mutateAsync({ kind: 'event', id, name: body.name, body, base: null })
      if ('saved' in outcome) go(`/event/${id}`)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <section className="sheet stack" aria-labelledby="new-event">
      <h2 id="new-event">{texts.title}</h2>
      {games.data?.length === 0 ? (
        <p>{texts.noGame}</p>
      ) : (
        <form
          className="row"
          style={{ alignItems: 'start' }}
          onSubmit={(event) => {
            event.preventDefault()
            void begin()
          }}
        >
          <TextInput
            label={texts.name}
            value={name}
            maxLength={200}
            error={tried && name.trim() === '' ? texts.noName : null}
            onChange={(event) => setName(event.currentTarget.value)}
          />
          <NativeSelect
            label={texts.game}
            value={game ?? ''}
            data={(games.data ?? []).map((each) => ({ value: each.id, label: each.name }))}
            onChange={(event) => setChosen(event.currentTarget.value)}
          />
          <TextInput
            label={texts.day}
            type="date"
            value={startsOn}
            onChange={(event) => setStartsOn(event.currentTarget.value)}
          />
          <Button type="submit" loading={save.isPending} style={{ marginTop: '1.6rem' }}>
            {texts.button}
          </Button>
        </form>
      )}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </section>
  )
}
