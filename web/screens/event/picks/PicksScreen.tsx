import { Link } from 'wouter'
import { allianceOf, onTurn, Selection } from '../../../../src/model/picks/selection/index.ts'
import { fewestTeams } from '../../../../src/model/picks/usual.ts'
import { useIsLead } from '../../../data/events.ts'
import { useLive } from '../../../data/live.ts'
import { type SelectionLog, useSelection } from '../../../data/selection.ts'
import { useSession } from '../../../data/session.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { PicksAsk } from '../../../worker/protocol.ts'
import { EventNav } from '../EventNav.tsx'
import { useNarrow } from '../useNarrow.ts'
import { Alliances } from './Alliances.tsx'
import { Aside } from './Aside.tsx'
import { Begin } from './Begin.tsx'
import { Calling, Undo } from './Calling.tsx'
import { Notes } from './Notes.tsx'
import { OfferPart } from './OfferPart.tsx'
import { OrderList } from './OrderList.tsx'
import { OwnOrder } from './OwnOrder.tsx'
import { askOf } from './rules.ts'
import { useUs } from './Us.tsx'
import { useOrder } from './useOrder.ts'
import { type PicksGround, usePicksEvent } from './usePicksEvent.ts'
import './picks.css'

/** Whom to invite first, and the selection as it is called out. With or without a connection it is worked out here. */
export default function PicksScreen({ id }: { id: string }) {
  const texts = words().picks
  const { ground, error, refetch } = usePicksEvent(id)
  const selection = useSelection(id)
  useLive(id)
  const narrow = useNarrow()
  const trouble = error ?? (ground ? selection.error : null)
  if (trouble) {
    const retry = () => {
      refetch()
      selection.refetch()
    }
    return <Trouble title={texts.notLoaded} error={trouble} retry={retry} />
  }
  if (!ground || !selection.log) return <Loading what={texts.loading} />
  const { event } = ground.pack
  const nav = <EventNav id={id} name={event.name} place="picks" />
  return (
    <div className="stack wide event-page">
      <div className="stack">
        <p className="small no-print">
          <Link href={`/event/${id}`}>{event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        {!narrow && nav}
        <Notes log={selection.log} ground={ground} />
      </div>
      {event.teams.length < fewestTeams ? (
        <Empty title={texts.tooFewTeams}>
          <p>{texts.tooFewTeamsHow}</p>
        </Empty>
      ) : (
        <Desk ground={ground} log={selection.log} />
      )}
      {narrow && nav}
    </div>
  )
}

const beginning = (ask: PicksAsk | null) => ask && Selection.begin(ask.rules, ask.seeds)

function Desk({ ground, log }: { ground: PicksGround; log: SelectionLog }) {
  const { pack, of } = ground
  const texts = words().picks
  const lead = useIsLead()
  const session = useSession()
  const mayCall = lead || session.data?.role === 'driveTeam'
  const { us, choice } = useUs(pack)
  const { selection } = log.protocol
  const ask = us === null ? null : askOf(pack, log.protocol, us)
  const { now, rough, fresh, error, refining, refine, stop } = useOrder(of, ask)
  const names = new Map(pack.event.teams.map(({ team, name }) => [team, name ?? '']))
  const shown = now?.order ?? rough
  const isOurs = us !== null && selection !== null && onTurn(selection.state, us)
  const alliance = (selection ?? beginning(ask))?.state ?? null
  const over = selection !== null && selection.state.turn === null
  const take = (team: string) => log.write({ kind: 'called', step: { kind: 'accepts', team } })
  return (
    <>
      {choice}
      {!selection && mayCall && <Begin pack={pack} log={log} />}
      {selection && us !== null && <Calling log={log} selection={selection} us={us} mayCall={mayCall} />}
      {selection && us !== null && ask && (
        <OfferPart of={of} ask={ask} selection={selection} playoff={pack.event.playoff} />
      )}
      {error && <Trouble title={texts.notComputed} error={error} />}
      {us !== null && !shown && !error && !over && <Loading what={texts.theOrder} />}
      {shown && !over && (
        <OrderList
          game={pack.game}
          names={names}
          now={now}
          order={shown}
          fresh={fresh}
          refining={refining}
          refine={() => void refine()}
          stop={stop}
          supposed={ask?.supposed ?? false}
          captain={us !== null && alliance !== null && allianceOf(alliance, us) !== null}
          take={isOurs && mayCall && fresh ? take : null}
        />
      )}
      {selection && <Alliances state={selection.state} us={us ?? ''} />}
      {lead && now && !over && <OwnOrder event={pack.event.id} log={log} now={now} />}
      {lead && <Aside event={pack.event.id} log={log} teams={pack.event.teams.map(({ team }) => team)} />}
      {selection && us === null && mayCall && <Undo log={log} />}
    </>
  )
}
