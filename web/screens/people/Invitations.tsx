import { Button } from '@mantine/core'
import type { Invitation } from '../../../src/store/types.ts'
import { useInvitations, usePeopleChanges } from '../../data/people.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'
import { Refusal } from './Fields.tsx'

const isOpen = ({ usedAt, withdrawnAt, expiresAt }: Invitation): boolean =>
  usedAt === null && withdrawnAt === null && Date.parse(expiresAt) > Date.now()

/** Invitations that nobody has used yet; they can be withdrawn. */
export function Invitations() {
  const texts = words().people
  const invitations = useInvitations()
  const { withdraw } = usePeopleChanges()
  if (invitations.isPending) return <Loading what={texts.what} />
  if (!invitations.data)
    return <Trouble title={texts.notLoaded} error={invitations.error} retry={() => void invitations.refetch()} />
  const open = invitations.data.filter(isOpen)
  return (
    <section className="stack no-print">
      <h2>{texts.invitations}</h2>
      {open.length === 0 && <p>{texts.noInvitations}</p>}
      <ul className="stack">
        {open.map(({ id, role, nickname, expiresAt }) => (
          <li key={id}>
            {nickname ?? texts.forAnybody}, {texts.roles[role]}, {texts.good(moment(expiresAt))}{' '}
            <Button
              variant="subtle"
              size="compact-md"
              aria-label={texts.withdrawOf(nickname ?? texts.forAnybody)}
              onClick={() => withdraw.mutate(id)}
            >
              {texts.withdraw}
            </Button>
          </li>
        ))}
      </ul>
      <Refusal error={withdraw.error} />
    </section>
  )
}
