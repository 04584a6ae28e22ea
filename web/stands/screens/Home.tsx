import { useState } from 'react'
import type { Assignment, Match, Seat } from '../../../src/model/scouting/types.ts'
import { remember } from '../data/database.ts'
import type { Pack } from '../data/shapes.ts'
import { takeOver } from '../data/takeover.ts'
import { Field } from '../parts/Field.tsx'
import { useLive } from '../parts/live.ts'
import { type Known, useKnown, useOutbox, useStanding } from '../parts/means.tsx'
import { go, linkTo } from '../parts/place.ts'
import { Screen } from '../parts/Screen.tsx'
import { useKept } from '../parts/useKept.ts'
import { beginDraft } from '../record/begin.ts'
import { aboutName, matchName, seatName } from '../record/names.ts'
import { comingMatches, nextSeat, slotAt, withTakeovers } from '../record/seats.ts'
import { matchTime, moment, useWords } from '../words/catalogue.ts'
import { useMoreWords } from '../words/more.ts'
import { Changed } from './Changed.tsx'
import { EventChoice } from './EventChoice.tsx'
import { Rehearsal } from './Rehearsal.tsx'

/** Where a scout comes to between two matches. */
export function Home() {
  const texts = useWords().home
  const { pit } = useMoreWords()
  const known = useKnown()
  const rows = useOutbox()
  if (!known) return <Screen title={texts.title} home />
  const { pack, me, session } = known
  if (!pack) {
    return (
      <Screen title={texts.title} home>
        <p>{texts.noPack}</p>
        <EventChoice />
        <nav className="list" aria-label={pit.read.title}>
          <a href={linkTo({ screen: 'read' })}>{pit.read.title}</a>
        </nav>
      </Screen>
    )
  }
  return (
    <Screen title={pack.pack.event.name} home>
      {session?.claimed && !session.person && <p className="notice">{texts.signIn}</p>}
      {me ? <Next known={known} pack={pack.pack} ahead={pack.ahead ?? 0} /> : !session?.claimed && <WhoAsk />}
      {me && <Rehearsal event={pack.pack.event.id} me={me} rows={rows ?? []} />}
      <OpenDrafts pack={pack.pack} />
      {me && <Changed rows={rows ?? []} event={pack.pack.event.id} scout={me.id} />}
      {me && (
        <nav className="list" aria-label={texts.title}>
          <a href={linkTo({ screen: 'choose' })}>{texts.other}</a>
          <a href={linkTo({ screen: 'practice' })}>{texts.practice}</a>
          <a href={linkTo({ screen: 'training' })}>{texts.training}</a>
          <a href={linkTo({ screen: 'visit' })}>{pit.visit.title}</a>
          <a href={linkTo({ screen: 'rank' })}>{pit.rank.title}</a>
          <a href={linkTo({ screen: 'change' })}>{pit.change.title}</a>
        </nav>
      )}
      <nav className="list" aria-label={texts.settings}>
        <a href={linkTo({ screen: 'records' })}>{texts.records}</a>
        <a href={linkTo({ screen: 'show' })}>{pit.show.title}</a>
        <a href={linkTo({ screen: 'read' })}>{pit.read.title}</a>
        <a href={linkTo({ screen: 'settings' })}>{texts.settings}</a>
      </nav>
      <p className="soft small">
        {texts.asOf(moment(pack.asked))}.{me && ` ${texts.signedIn(me.nickname)}.`}
      </p>
      <Offline />
    </Screen>
  )
}

function Next({ known, pack, ahead }: { known: Known; pack: Pack; ahead: number }) {
  const texts = useWords().home
  const { database, refresh } = useStanding()
  const rows = useOutbox()
  const taken = useLive(() => database.memory.get('takeovers'))?.value as
    | { event: string; match: string; alliance: 'red' | 'blue'; position: 1 | 2 | 3 }[]
    | undefined
  const { me } = known
  if (!rows || !me) return null
  const recorded = new Set(
    rows.flatMap(({ row }) =>
      row.kind === 'observation' && row.event === pack.event.id && row.body.match ? [row.body.match] : [],
    ),
  )
  const mine = (taken ?? []).filter(({ event }) => event === pack.event.id)
  const assignments = withTakeovers(pack.assignments, mine, me.id)
  // By the server's clock: a phone's may be wrong by a day, and every match would be over.
  const now = Date.now() - ahead
  const coming = { recorded, now }
  const next = nextSeat({ matches: pack.matches, assignments }, { person: me.id, ...coming })
  const begin = async (match: Match, seat: Seat) => {
    const about = {
      match: match.id,
      seat,
      team: slotAt(match, seat).team,
      identifiedBy: 'position',
      subject: 'robot',
      origin: 'live',
      mode: 'timeline',
    } as const
    go({ screen: 'draft', id: await beginDraft(database, { pack, me, about }) })
  }
  const [first] = comingMatches(pack.matches, coming)
  const others = first ? assignments.filter(({ match, person }) => match === first.id && person !== me.id) : []
  return (
    <>
      {next ? (
        <section className={`next ${next.seat.alliance}`} aria-label={texts.next}>
          <h2>{texts.next}</h2>
          <p className="big">{matchName(next.match)}</p>
          <p className="robot">
            {seatName(next.seat)} · <strong>{slotAt(next.match, next.seat).team}</strong>
            {next.match.time && <span className="soft"> · {matchTime(next.match.time, now)}</span>}
          </p>
          <button type="button" className="strong tall" onClick={() => void begin(next.match, next.seat)}>
            {texts.record}
          </button>
        </section>
      ) : (
        <p className="notice plain">{texts.noNext}</p>
      )}
      {first && others.length > 0 && (
        <Neighbours
          match={first}
          seats={others}
          people={pack.people}
          take={async (seat) => {
            await takeOver(database, { event: pack.event.id, match: first.id, ...seat })
            // Whose seat it was learns of it now, and not when this page asks for what is new the next time.
            void refresh().catch(() => false)
            await begin(first, seat)
          }}
        />
      )}
    </>
  )
}

/** Whoever sits beside somebody who is away takes their seat of the coming match by one tap. */
function Neighbours(props: {
  match: Match
  seats: readonly Assignment[]
  people: Pack['people']
  take(seat: Seat): Promise<void>
}) {
  const words = useWords()
  const { match, seats, people } = props
  const name = (id: string | null) => people.find((person) => person.id === id)?.nickname
  return (
    <details className="neighbours">
      <summary>{words.home.neighbour(matchName(match))}</summary>
      <div className="list">
        {seats.map(({ seat, person }) => (
          <button key={seatName(seat)} type="button" onClick={() => void props.take(seat)}>
            {seatName(seat)} · {slotAt(match, seat).team}
            <span className="soft small">
              {name(person) ? words.choose.watchedBy(name(person)!) : words.choose.nobody}
            </span>
          </button>
        ))}
      </div>
    </details>
  )
}

function OpenDrafts({ pack }: { pack: Pack }) {
  const texts = useWords().home
  const { database } = useStanding()
  const open = useLive(async () => {
    const drafts = await database.drafts.where('step').anyOf('before', 'running', 'check').toArray()
    const counts = await Promise.all(drafts.map(({ id }) => database.taps.where('draft').equals(id).count()))
    return drafts.map((draft, index) => ({ draft, count: counts[index]! }))
  })
  if (!open || open.length === 0) return null
  return (
    <nav className="list open" aria-label={texts.open}>
      <h2>{texts.open}</h2>
      {open.map(({ draft, count }) => (
        <a key={draft.id} href={linkTo({ screen: 'draft', id: draft.id })}>
          {texts.resume(aboutName(draft.about, pack.matches))} <span className="soft">({texts.taps(count)})</span>
        </a>
      ))}
    </nav>
  )
}

/** Only where the server asks nobody to sign in. */
function WhoAsk() {
  const texts = useWords().home
  const { database } = useStanding()
  const [name, setName] = useState('')
  const [missing, setMissing] = useState(false)
  return (
    <form
      className="card"
      onSubmit={(event) => {
        event.preventDefault()
        const nickname = name.trim()
        setMissing(nickname === '')
        if (nickname !== '') void remember(database, 'nickname', nickname)
      }}
    >
      <Field
        label={texts.who}
        help={texts.whoWhy}
        error={missing ? texts.whoMissing : null}
        value={name}
        maxLength={40}
        change={setName}
      />
      <button type="submit" className="strong">
        {useWords().choose.go}
      </button>
    </form>
  )
}

function Offline() {
  const texts = useWords().home
  const kept = useKept()
  if (kept === 'ready') return <p className="soft small">{texts.keepsOffline}</p>
  return kept === 'onlyHttps' ? <p className="notice">{texts.onlySecure}</p> : null
}
