import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { type Role, roles } from '../../../src/model/scouting/roles.ts'
import type { Person } from '../../../src/store/types.ts'
import { personalDataAt, usePeople, usePeopleChanges } from '../../data/people.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { day } from '../../words/format.ts'
import { Erase } from './Erase.tsx'
import { Refusal } from './Fields.tsx'
import { Sure } from './Sure.tsx'

/** Everybody, by role; a change acts at once. */
export function Members() {
  const texts = words().people
  const people = usePeople()
  const { changeRole, end, erase, signOut } = usePeopleChanges()
  if (people.isPending) return <Loading what={texts.what} />
  if (!people.data) return <Trouble title={texts.notLoaded} error={people.error} retry={() => void people.refetch()} />
  const sorted = people.data.toSorted(
    (a, b) => Number(a.endedAt !== null) - Number(b.endedAt !== null) || roles.indexOf(a.role) - roles.indexOf(b.role),
  )
  return (
    <section className="stack no-print">
      <h2>{texts.members}</h2>
      <div className="scroll people-table" tabIndex={0} role="region" aria-label={texts.members}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.member}</th>
              <th scope="col">{texts.role}</th>
              <th scope="col">{texts.since}</th>
              <th scope="col">
                <span className="visually-hidden">{texts.end}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sorted.map((person) => (
              <Row
                key={person.id}
                person={person}
                onRole={(role) => changeRole.mutate({ person: person.id, role })}
                onEnd={(undo) => end.mutate({ person: person.id, undo })}
                onSignOut={() => signOut.mutate(person.id)}
                onErase={() => erase.mutate({ person: person.id, nickname: person.nickname })}
              />
            ))}
          </tbody>
        </table>
      </div>
      <Refusal error={changeRole.error ?? end.error ?? signOut.error ?? erase.error} />
      {erase.data && <p role="status">{texts.personal.done(erase.data.records)}</p>}
      {signOut.data && <p role="status">{texts.signedOut(signOut.data.ended)}</p>}
      <ul className="soft small">
        {roles.map((role) => (
          <li key={role}>
            {texts.roles[role]}: {texts.does[role]}
          </li>
        ))}
      </ul>
    </section>
  )
}

interface RowProps {
  person: Person
  onRole(role: Role): void
  onEnd(undo: boolean): void
  onSignOut(): void
  onErase(): void
}

function Row(props: RowProps) {
  const texts = words().people
  const { nickname, role, createdAt, endedAt } = props.person
  return (
    <tr>
      <th scope="row">{nickname}</th>
      <td>
        {endedAt === null ? (
          <NativeSelect
            aria-label={texts.roleOf(nickname)}
            value={role}
            data={roles.map((each) => ({ value: each, label: texts.roles[each] }))}
            onChange={(event) => props.onRole(event.currentTarget.value as Role)}
          />
        ) : (
          texts.roles[role]
        )}
      </td>
      <td>{endedAt === null ? day(createdAt) : texts.hasLeft(day(endedAt))}</td>
      <td>
        <Actions {...props} />
      </td>
    </tr>
  )
}

/** What can be done with somebody; what acts at once, or for good, is asked about in place. */
function Actions(props: RowProps) {
  const texts = words().people
  const { id, nickname, endedAt } = props.person
  const [asked, setAsked] = useState<'end' | 'signOut' | 'erase' | null>(null)
  const close = () => setAsked(null)
  if (asked === 'erase')
    return (
      <Erase
        person={id}
        nickname={nickname}
        onNo={close}
        onYes={() => {
          close()
          props.onErase()
        }}
      />
    )
  if (asked)
    return (
      <Sure
        question={asked === 'end' ? texts.sureEnd(nickname) : texts.sureSignOut(nickname)}
        yes={asked === 'end' ? texts.reallyEnd : texts.reallySignOut}
        onNo={close}
        onYes={() => {
          close()
          if (asked === 'end') props.onEnd(false)
          else props.onSignOut()
        }}
      />
    )
  return (
    <div className="row">
      {endedAt !== null ? (
        <Button variant="subtle" aria-label={texts.takeBackOf(nickname)} onClick={() => props.onEnd(true)}>
          {texts.takeBack}
        </Button>
      ) : (
        <>
          <Button variant="subtle" aria-label={texts.signOutOf(nickname)} onClick={() => setAsked('signOut')}>
            {texts.signOutAll}
          </Button>
          <Button variant="subtle" aria-label={texts.endOf(nickname)} onClick={() => setAsked('end')}>
            {texts.end}
          </Button>
        </>
      )}
      <Button
        component="a"
        variant="subtle"
        href={personalDataAt(id)}
        download
        aria-label={texts.personal.dataOf(nickname)}
      >
        {texts.personal.data}
      </Button>
      <Button variant="subtle" aria-label={texts.personal.eraseOf(nickname)} onClick={() => setAsked('erase')}>
        {texts.personal.erase}
      </Button>
    </div>
  )
}
