import { useState } from 'react'
import { Link } from 'wouter'
import { useMayPack } from '../../data/eventPack.ts'
import { useIsLead } from '../../data/events.ts'
import { words } from '../../words/catalogue.ts'
import { useNarrow } from './useNarrow.ts'
// Every page of an event has this navigation, and is opened by an address of its own.
import '../start/start.css'
import './event.css'
import './eventNav.css'

/** Everything of an event, by when it is used. */
const groups = {
  before: ['teams', 'schedule', 'watch', 'sheets', 'people'],
  during: [
    ...['briefing', 'pit', 'board', 'doubts', 'estimates', 'look', 'seeds', 'field', 'results', 'hand-in', 'codes'],
    'stands',
  ],
  after: ['ranking', 'picks', 'playoffs', 'forecasts', 'after', 'visits', 'exchange'],
} as const

type Group = keyof typeof groups
export type EventPlace = (typeof groups)[Group][number]

const names = Object.keys(groups) as Group[]

/** Pages that are not of one event alone. */
const elsewhere: { readonly [place in EventPlace]?: string } = { people: '/people', stands: '/stands' }

const groupOf = (place: EventPlace): Group =>
  names.find((group) => (groups[group] as readonly EventPlace[]).includes(place)) ?? 'before'

/** The ways through an event. On a phone one group at a time, so that the page itself begins on the first screen. */
export function EventNav(props: { id: string; name: string; place: EventPlace }) {
  const { id, name, place } = props
  const texts = words().event
  const lead = useIsLead()
  const mayPack = useMayPack()
  const narrow = useNarrow()
  const [open, setOpen] = useState<Group>(groupOf(place))
  // Files hold everybody's nicknames, doubts name scouts.
  const placesOf = (group: Group) =>
    (groups[group] as readonly EventPlace[]).filter((each) =>
      each === 'picks' || each === 'playoffs' ? mayPack : lead || !['exchange', 'doubts', 'look'].includes(each),
    )
  const links = (group: Group) => (
    <ul id={`places-${group}`}>
      {placesOf(group).map((each) => (
        <li key={each}>{link(each)}</li>
      ))}
    </ul>
  )
  const link = (each: EventPlace) => {
    const current = each === place ? ('page' as const) : undefined
    const href = elsewhere[each] ?? `/event/${id}/${each}`
    // The stands are a page of their own, not a screen of this one.
    if (each === 'stands') return <a href={href}>{texts.places[each]}</a>
    return (
      <Link href={href} aria-current={current}>
        {texts.places[each]}
      </Link>
    )
  }
  return (
    <nav className="event-places no-print" aria-label={texts.partsOf(name)}>
      {narrow ? (
        <>
          <div className="event-groups">
            {names.map((group) => (
              <button
                key={group}
                type="button"
                aria-expanded={group === open}
                aria-controls={group === open ? `places-${group}` : undefined}
                onClick={() => setOpen(group)}
              >
                {texts.when[group]}
              </button>
            ))}
          </div>
          {links(open)}
        </>
      ) : (
        names.map((group) => (
          <div key={group} className="event-group">
            <p className="soft small">{texts.when[group]}</p>
            {links(group)}
          </div>
        ))
      )}
    </nav>
  )
}
