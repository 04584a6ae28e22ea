import { Empty } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { BringEvent } from './BringEvent.tsx'
import { Downloads } from './Downloads.tsx'

/** The event as files, out and in. */
export function ExchangePart({ event, lead }: EventPage) {
  const texts = words().exchange
  if (!lead)
    return (
      <Empty title={texts.onlyLeads}>
        <p>{texts.onlyLeadsHelp}</p>
      </Empty>
    )
  return (
    <>
      <Downloads event={event.id} />
      <BringEvent />
    </>
  )
}
