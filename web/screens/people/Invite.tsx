import { Button, NativeSelect, NumberInput, TextInput } from '@mantine/core'
import { useState } from 'react'
import { type Role, roles } from '../../../src/model/scouting/roles.ts'
import { useList } from '../../data/documents.ts'
import { type Invited, usePeopleChanges } from '../../data/people.ts'
import { words } from '../../words/catalogue.ts'
import { Refusal } from './Fields.tsx'
import { InvitationSheet } from './InvitationSheet.tsx'

const lives = [1, 12, 24, 96, 168, 336]

/** Makes invitations, and shows them until the page is left. */
export function Invite() {
  const texts = words().people
  const { invite } = usePeopleChanges()
  const events = useList('event')
  const [role, setRole] = useState<Role>('scout')
  const [nickname, setNickname] = useState('')
  const [event, setEvent] = useState('')
  const [hours, setHours] = useState(24)
  const [count, setCount] = useState<number | string>(1)
  const [made, setMade] = useState<Invited[]>([])
  const forOne = nickname.trim() !== ''
  const many = forOne ? 1 : Number(count)
  const wrongCount = !Number.isInteger(many) || many < 1 || many > 60
  const send = () =>
    invite.mutate(
      { role, hours, count: many, ...(forOne && { nickname: nickname.trim() }), ...(event !== '' && { event }) },
      { onSuccess: setMade },
    )
  return (
    <section className="stack">
      <form
        className="sheet stack no-print"
        noValidate
        onSubmit={(submitted) => {
          submitted.preventDefault()
          if (!wrongCount) send()
        }}
      >
        <h2>{texts.invite}</h2>
        <div className="columns">
          <NativeSelect
            label={texts.inviteRole}
            description={texts.does[role]}
            value={role}
            data={roles.map((each) => ({ value: each, label: texts.roles[each] }))}
            onChange={(change) => setRole(change.currentTarget.value as Role)}
          />
          <TextInput
            label={texts.inviteFor}
            description={texts.inviteForHelp}
            value={nickname}
            maxLength={40}
            autoComplete="off"
            onChange={(change) => setNickname(change.currentTarget.value)}
          />
          {(events.data?.length ?? 0) > 0 && (
            <NativeSelect
              label={texts.inviteEvent}
              value={event}
              data={[
                { value: '', label: texts.noEvent },
                ...(events.data ?? []).map(({ id, name }) => ({ value: id, label: name })),
              ]}
              onChange={(change) => setEvent(change.currentTarget.value)}
            />
          )}
          <NativeSelect
            label={texts.inviteHours}
            value={String(hours)}
            data={lives.map((each) => ({ value: String(each), label: texts.hours(each) }))}
            onChange={(change) => setHours(Number(change.currentTarget.value))}
          />
          {!forOne && (
            <NumberInput
              label={texts.inviteCount}
              value={count}
              min={1}
              max={60}
              clampBehavior="none"
              error={wrongCount ? texts.wrongCount : null}
              onChange={setCount}
            />
          )}
        </div>
        <Refusal error={invite.error} />
        <div>
          <Button type="submit" loading={invite.isPending}>
            {texts.inviteDo}
          </Button>
        </div>
      </form>
      {made.length > 0 && <InvitationSheet made={made} />}
    </section>
  )
}
