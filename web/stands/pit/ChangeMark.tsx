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

/** That a robot was changed: what was seen before says less. */
export default function ChangeMark() {
  const { pit } = useMoreWords()
  return <InEvent title={pit.change.title}>{({ pack, me }) => <Form pack={pack} me={me} />}</InEvent>
}

function Form({ pack, me }: { pack: Pack; me: Me }) {
  const { pit } = useMoreWords()
  const texts = pit.change
  const { database, sender } = useStanding()
  const [chosen, setChosen] = useState(noTeam)
  const [after, setAfter] = useState('')
  const [note, setNote] = useState('')
  const [missing, setMissing] = useState(false)
  const [done, setDone] = useState(false)
  const team = teamOf(chosen)
  const matches = pack.matches.filter(({ red, blue }) => [...red, ...blue].some((slot) => slot.team === team))

  const keep = async () => {
    setMissing(team === null)
    if (team === null) return
    const said = note.trim()
    const body = { team, afterMatch: after === '' ? null : after, ...(said !== '' && { note: said }) }
    await keepRow(database, { kind: 'change', body, event: pack.event.id, scout: me.id })
    sender.wake()
    setChosen(noTeam)
    setAfter('')
    setNote('')
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
        choose={(next) => {
          setChosen(next)
          setAfter('')
        }}
      />
      <div className="field">
        <label htmlFor="after">{texts.after}</label>
        <select id="after" value={after} onChange={(event) => setAfter(event.currentTarget.value)}>
          <option value="">{texts.before}</option>
          {matches.map((match) => (
            <option key={match.id} value={match.id}>
              {matchName(match)}
            </option>
          ))}
        </select>
      </div>
      <Field label={texts.what} value={note} maxLength={2000} change={setNote} />
      <button type="button" className="strong tall" onClick={() => void keep()}>
        {pit.keep}
      </button>
    </>
  )
}
