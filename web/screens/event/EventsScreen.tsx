import { useIsLead } from '../../data/events.ts'
import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import { EventFrame } from './EventFrame.tsx'
import { BringEvent } from './exchange/BringEvent.tsx'
import { NewEvent } from './NewEvent.tsx'
import '../start/start.css'
import './event.css'

/** The list of events, or one of them: one address and one piece of script for both. */
export default function EventsScreen(props: { id?: string | undefined; part?: string | undefined }) {
  const texts = words().event.list
  const lead = useIsLead()
  if (props.id !== undefined) return <EventFrame id={props.id} part={props.part} />
  return (
    <DocumentList kind="event" href="/event" title={texts.title} noun={texts.noun} intro={texts.intro} ownFiles>
      <NewEvent />
      {lead && <BringEvent />}
    </DocumentList>
  )
}
