import { Button } from '@mantine/core'
import { useState } from 'react'
import { useNamed, usePeopleChanges } from '../../data/people.ts'
import { Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { Refusal } from './Fields.tsx'
import { Sure } from './Sure.tsx'

/** Those whose nicknames came with files of events: a lead may remove them. Nothing is shown while there are none. */
export function Named() {
  const texts = words().people.named
  const named = useNamed()
  const { forget } = usePeopleChanges()
  const [asked, setAsked] = useState<string | null>(null)
  if (named.error) return <Trouble title={texts.notLoaded} error={named.error} retry={() => void named.refetch()} />
  const people = (named.data ?? []).flatMap(({ id, nickname }) => (nickname === null ? [] : [{ id, nickname }]))
  if (people.length === 0 && !forget.isSuccess) return null
  return (
    <section className="stack no-print" aria-labelledby="named">
      <h2 id="named">{texts.title}</h2>
      <p className="soft">{texts.intro}</p>
      <ul className="plain-list stack">
        {people.map(({ id, nickname }) => (
          <li key={id} className="row">
            <span>{nickname}</span>
            {asked === id ? (
              <Sure
                question={texts.sure(nickname)}
                yes={texts.really}
                onNo={() => setAsked(null)}
                onYes={() => {
                  setAsked(null)
                  forget.mutate(id)
                }}
              />
            ) : (
              <Button variant="subtle" aria-label={texts.removeOf(nickname)} onClick={() => setAsked(id)}>
                {texts.remove}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <Refusal error={forget.error} />
      {forget.isSuccess && <p role="status">{texts.removed}</p>}
    </section>
  )
}
