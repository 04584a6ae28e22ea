import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { QrCode } from '../../charts/QrCode.tsx'
import type { Invited } from '../../data/people.ts'
import { useReach } from '../../data/rounds.ts'
import { words } from '../../words/catalogue.ts'
import { moment } from '../../words/format.ts'

/** Fresh invitations as codes to be scanned from the screen, or cut out of a printed sheet. */
export function InvitationSheet(props: { made: readonly Invited[] }) {
  const texts = words().people
  const reach = useReach()
  const here = window.location.origin
  const addresses = [...new Set([...(isLocal(here) ? [] : [here]), ...(reach.data?.addresses ?? []), here])]
  const [chosen, setChosen] = useState<string | null>(null)
  const address = chosen ?? addresses[0] ?? here
  return (
    <div className="stack">
      <h3>{texts.fresh}</h3>
      <p className="soft no-print">{texts.freshHow}</p>
      {isLocal(here) && reach.data?.onlyHere && <p className="loss no-print">{texts.onlyHere}</p>}
      <div className="row no-print">
        {addresses.length > 1 && (
          <NativeSelect
            label={texts.at}
            value={address}
            data={addresses}
            onChange={(event) => setChosen(event.currentTarget.value)}
          />
        )}
        <Button variant="default" onClick={() => window.print()}>
          {texts.print}
        </Button>
      </div>
      <div className="invitation-sheet">
        {props.made.map((each) => (
          <Slip key={each.invitation.id} invited={each} address={address} />
        ))}
      </div>
    </div>
  )
}

const isLocal = (origin: string): boolean => /^https?:\/\/(localhost|127\.|\[::1\])/.test(origin)

function Slip(props: { invited: Invited; address: string }) {
  const texts = words().people
  const { invitation, token } = props.invited
  const [copied, setCopied] = useState(false)
  const role = texts.roles[invitation.role]
  const link = `${props.address}/join#${token}`
  return (
    <div className="invitation-slip">
      <QrCode text={link} label={texts.qr(role)} width={220} />
      <strong>{invitation.nickname ?? role}</strong>
      {invitation.nickname !== null && <span>{role}</span>}
      <span className="small">{texts.good(moment(invitation.expiresAt))}</span>
      <Button
        variant="subtle"
        className="no-print"
        onClick={() => {
          // Pages over plain http have no clipboard: then the link is there to be read.
          void navigator.clipboard?.writeText(link).then(
            () => setCopied(true),
            () => setCopied(false),
          )
        }}
      >
        {copied ? texts.copied : texts.copy}
      </Button>
      <details className="small no-print">
        <summary>{texts.at}</summary>
        <code style={{ overflowWrap: 'anywhere' }}>{link}</code>
      </details>
    </div>
  )
}
