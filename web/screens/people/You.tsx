import { Button } from '@mantine/core'
import { useState } from 'react'
import { problemsOf } from '../../data/api.ts'
import { personalDataAt, useEntrance, usePeople } from '../../data/people.ts'
import type { Session } from '../../data/session.ts'
import { words } from '../../words/catalogue.ts'
import { PassphraseField, Refusal } from './Fields.tsx'

/** Who is signed in here, and how that ends. */
export function You(props: { session: Session }) {
  const texts = words().people
  const { person, device, role } = props.session
  const { signOut } = useEntrance()
  if (!person || !device || !role) return null
  return (
    <section className="sheet stack no-print">
      <h2>{texts.you}</h2>
      <p>{texts.youAre(person.nickname, texts.roles[role], device.name)}</p>
      <div className="row">
        <Button variant="default" loading={signOut.isPending} onClick={() => signOut.mutate(false)}>
          {texts.signOut}
        </Button>
        <Button variant="default" loading={signOut.isPending} onClick={() => signOut.mutate(true)}>
          {texts.signOutEverywhere}
        </Button>
      </div>
      <Refusal error={signOut.error} />
      <p>
        <a href={personalDataAt(person.id)} download>
          {texts.personal.mine}
        </a>
      </p>
      {role === 'lead' && <Passphrase person={person.id} />}
    </section>
  )
}

/** Leads sign in by passphrase; somebody who became one has none yet. */
function Passphrase(props: { person: string }) {
  const texts = words().people
  const { changePassphrase } = useEntrance()
  const people = usePeople()
  const [current, setCurrent] = useState('')
  const [next, setNext] = useState('')
  const [tried, setTried] = useState(false)
  const has = people.data?.find(({ id }) => id === props.person)?.hasPassphrase ?? true
  const at = (field: string) => problemsOf(changePassphrase.error).find(({ path }) => path[0] === field)?.message
  const send = () => {
    setTried(true)
    if (next === '' || (has && current === '')) return
    changePassphrase.mutate(
      { passphrase: next, ...(has && { current }) },
      {
        onSuccess: () => {
          setCurrent('')
          setNext('')
          setTried(false)
          void people.refetch()
        },
      },
    )
  }
  const missing = (value: string) => (tried && value === '' ? texts.neededPassphrase : undefined)
  return (
    <details>
      <summary>{has ? texts.changePassphrase : texts.setPassphrase}</summary>
      <form
        className="stack entrance"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          send()
        }}
      >
        {has && (
          <PassphraseField
            label={texts.current}
            value={current}
            onChange={setCurrent}
            error={missing(current) ?? at('current')}
          />
        )}
        <PassphraseField
          label={texts.next}
          fresh
          value={next}
          onChange={setNext}
          error={missing(next) ?? at('passphrase')}
        />
        <Refusal error={changePassphrase.error} />
        {changePassphrase.isSuccess && <p role="status">{texts.passphraseKept}</p>}
        <div>
          <Button type="submit" variant="default" loading={changePassphrase.isPending}>
            {has ? texts.changePassphrase : texts.setPassphrase}
          </Button>
        </div>
      </form>
    </details>
  )
}
