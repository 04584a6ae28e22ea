import { useLocation } from 'wouter'
import { useSession } from '../../data/session.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { Backups } from './Backups.tsx'
import { ClaimPage } from './ClaimPage.tsx'
import { Devices } from './Devices.tsx'
import { Invitations } from './Invitations.tsx'
import { Invite } from './Invite.tsx'
import { JoinPage } from './JoinPage.tsx'
import { Log } from './Log.tsx'
import { Members } from './Members.tsx'
import { Named } from './Named.tsx'
import { SignInForm } from './SignInForm.tsx'
import { You } from './You.tsx'
import './people.css'

/** The people and the ways in: four addresses, one piece of script. */
export default function PeopleScreen() {
  const [location, go] = useLocation()
  if (location.startsWith('/claim')) return <ClaimPage />
  if (location.startsWith('/join')) return <JoinPage />
  if (!location.startsWith('/sign-in')) return <People />
  return (
    <div className="stack entrance">
      <h1>{words().people.signIn}</h1>
      <SignInForm onDone={() => go('/')} />
    </div>
  )
}

function People() {
  const texts = words().people
  const session = useSession()
  const [, go] = useLocation()
  if (session.isPending) return <Loading what={texts.what} />
  if (!session.data)
    return <Trouble title={texts.notLoaded} error={session.error} retry={() => void session.refetch()} />
  const { claimed, person, role } = session.data
  return (
    <div className="stack wide">
      <h1>{texts.title}</h1>
      {!claimed && (
        <section className="sheet stack no-print">
          <h2>{texts.unclaimed}</h2>
          <p>{texts.unclaimedHow}</p>
        </section>
      )}
      {person && <You session={session.data} />}
      {claimed && !person && <SignInForm onDone={() => go('/people')} />}
      {person && role !== 'lead' && <p className="soft">{texts.onlyLeads}</p>}
      {role === 'lead' && (
        <>
          {claimed && <Invite />}
          {claimed && <Invitations />}
          {claimed && <Members />}
          <Named />
          {claimed && <Devices here={session.data.device?.id ?? null} />}
          <Backups />
          <Log />
        </>
      )}
    </div>
  )
}
