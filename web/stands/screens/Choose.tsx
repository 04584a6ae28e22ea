import { useState } from 'react'
import type { Match, Seat } from '../../../src/model/scouting/types.ts'
import type { Pack } from '../data/shapes.ts'
import { takeOver } from '../data/takeover.ts'
import { Choice } from '../parts/Choice.tsx'
import { Field } from '../parts/Field.tsx'
import { type Known, useKnown, useOutbox, useStanding } from '../parts/means.tsx'
import { goInstead } from '../parts/place.ts'
import { Screen } from '../parts/Screen.tsx'
import { beginDraft } from '../record/begin.ts'
import type { About } from '../record/draft.ts'
import { matchName, seatName } from '../record/names.ts'
import { firstUnplayed, sameSeat, seats, slotAt, watcherOf } from '../record/seats.ts'
import { useWords } from '../words/catalogue.ts'

/** Any robot of any match, and what is recorded of it. */
export function Choose() {
  const title = useWords().choose.title
  const known = useKnown()
  return (
    <Screen title={title}>
      {known?.pack && known.me && <Form known={known} pack={known.pack.pack} me={known.me} />}
    </Screen>
  )
}

type Origin = 'live' | 'video'

function Form({ known, pack, me }: { known: Known; pack: Pack; me: NonNullable<Known['me']> }) {
  const texts = useWords()
  const { database, refresh } = useStanding()
  const [matchId, setMatch] = useState<string | null>(() => firstUnplayed(pack.matches)?.id ?? null)
  const [seat, setSeat] = useState<Seat>({ alliance: 'red', position: 1 })
  const [subject, setSubject] = useState<About['subject']>('robot')
  const [mode, setMode] = useState<About['mode']>('timeline')
  const [origin, setOrigin] = useState<Origin>('live')
  const [typed, setTyped] = useState('')
  const [missing, setMissing] = useState(false)
  const match = pack.matches.find(({ id }) => id === matchId)
  const watcher = match ? watcherOf(pack.assignments, match.id, seat) : null

  const begin = async () => {
    const team = match ? slotAt(match, seat).team : typed.trim()
    setMissing(team === '')
    if (team === '') return
    const about: About = {
      match: match?.id ?? null,
      seat: match ? seat : null,
      team,
      identifiedBy: match ? 'position' : 'number',
      subject,
      origin,
      mode,
    }
    // Where nobody signs in, seats are nobody's.
    if (match && origin === 'live' && watcher !== me.id && known.session?.claimed !== false) {
      await takeOver(database, { event: pack.event.id, match: match.id, ...seat })
      // Whose seat it was learns of it now, and not when this page asks for what is new the next time.
      void refresh().catch(() => false)
    }
    goInstead({ screen: 'draft', id: await beginDraft(database, { pack, me, about }) })
  }

  return (
    <>
      <div className="field">
        <label htmlFor="match">{texts.choose.match}</label>
        <select id="match" value={matchId ?? ''} onChange={(event) => setMatch(event.currentTarget.value || null)}>
          {pack.matches.map((each) => (
            <option key={each.id} value={each.id}>
              {matchName(each)}
            </option>
          ))}
          <option value="">{texts.choose.outside}</option>
        </select>
      </div>
      {match ? (
        <SeatChoice match={match} seat={seat} choose={setSeat} known={known} pack={pack} />
      ) : (
        <Field
          label={texts.choose.team}
          inputMode="numeric"
          value={typed}
          maxLength={20}
          error={missing ? texts.choose.teamMissing : null}
          change={setTyped}
        />
      )}
      {match && watcher !== null && watcher !== me.id && <p className="notice plain">{texts.choose.take}</p>}
      <Choice
        label={texts.choose.subject}
        value={subject}
        choose={setSubject}
        options={(['robot', 'human'] as const).map((value) => ({ value, name: texts.choose[value] }))}
      />
      <Choice
        label={texts.choose.how}
        value={mode}
        choose={setMode}
        options={(['timeline', 'counts'] as const).map((value) => ({ value, name: texts.choose[value] }))}
      />
      <Choice
        label={texts.choose.origin}
        value={origin}
        choose={setOrigin}
        options={(['live', 'video'] as const).map((value) => ({ value, name: texts.choose[value] }))}
      />
      <button type="button" className="strong tall" onClick={begin}>
        {texts.choose.go}
      </button>
    </>
  )
}

function SeatChoice(props: { match: Match; seat: Seat; choose(seat: Seat): void; known: Known; pack: Pack }) {
  const { match, seat, choose, known, pack } = props
  const texts = useWords().choose
  const rows = useOutbox() ?? []
  const whose = (of: Seat) => {
    const person = watcherOf(pack.assignments, match.id, of)
    if (person === null) return texts.nobody
    if (person === known.me?.id) return texts.yours
    return texts.watchedBy(pack.people.find(({ id }) => id === person)?.nickname ?? person)
  }
  const recorded = (of: Seat) =>
    rows.some(
      ({ row }) => row.kind === 'observation' && row.body.match === match.id && row.seat && sameSeat(row.seat, of),
    )
  return (
    <fieldset className="choice">
      <legend>{texts.seats}</legend>
      <div className="seats">
        {seats.map((each) => (
          <button
            key={`${each.alliance}${each.position}`}
            type="button"
            className={`seat ${each.alliance}`}
            aria-pressed={sameSeat(each, seat)}
            onClick={() => choose(each)}
          >
            <span>{seatName(each)}</span>
            <strong>{slotAt(match, each).team}</strong>
            <small>{recorded(each) ? texts.recorded : whose(each)}</small>
          </button>
        ))}
      </div>
    </fieldset>
  )
}
