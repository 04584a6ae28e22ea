import { useState } from 'react'
import type { Me } from '../data/session.ts'
import type { Pack } from '../data/shapes.ts'
import { Field } from '../parts/Field.tsx'
import { useStanding } from '../parts/means.tsx'
import { matchName } from '../record/names.ts'
import { useMoreWords } from '../words/more.ts'
import { InEvent, Kept } from './InEvent.tsx'
import { keepRow } from './keep.ts'
import { noTeam, TeamChoice, teamOf } from './TeamChoice.tsx'
import { useForm } from './useForm.ts'

/** That a robot was changed: what was seen before says less. */
export default function ChangeMark() {
  const { pit } = useMoreWords()
  return <InEvent title={pit.change.title}>{({ pack, me }) => <Form pack={pack} me={me} />}</InEvent>
}

const fresh = { chosen: noTeam, after: '', note: '' }

function Form({ pack, me }: { pack: Pack; me: Me }) {
  const { pit } = useMoreWords()
  const texts = pit.change
  const { database, sender } = useStanding()
  const form = useForm(`change/${pack.event.id}`, fresh)
  const [missing, setMissing] = useState(false)
  const [done, setDone] = useState(false)
  if (!form) return null
  const [typed, type] = form
  const { chosen, after, note } = typed
  const team = teamOf(chosen)
  const matches = pack.matches.filter(({ red, blue }) => [...red, ...blue].some((slot) => slot.team === team))

  const keep = async () => {
    setMissing(team === null)
    if (team === null) return
    const said = note.trim()
    const body = { team, afterMatch: after === '' ? null : after, ...(said !== '' && { note: said }) }
    await keepRow(database, { kind: 'change', body, event: pack.event.id, scout: me.id })
    sender.wake()
    type(fresh)
    setDone(true)
  }
  if (done) return <Kept again={() => setDone(false)} />
  return (
    <>
      <p>{texts.intro}</p>
      <TeamChoice
        pack={pack}
        value={chosen}
        missing={missing}
        choose={(next) => type({ ...typed, chosen: next, after: '' })}
      />
      <div className="field">
        <label htmlFor="after">{texts.after}</label>
        <select id="after" value={after} onChange={(event) => type({ ...typed, after: event.currentTarget.value })}>
          <option value="">{texts.before}</option>
          {matches.map((match) => (
            <option key={match.id} value={match.id}>
              {matchName(match)}
            </option>
          ))}
        </select>
      </div>
      <Field label={texts.what} value={note} maxLength={2000} change={(next) => type({ ...typed, note: next })} />
      <button type="button" className="strong tall" onClick={() => void keep()}>
        {pit.keep}
      </button>
    </>
  )
}
