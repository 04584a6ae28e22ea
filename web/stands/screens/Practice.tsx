import { useState } from 'react'
import { recall, remember } from '../data/database.ts'
import { Field } from '../parts/Field.tsx'
import { useLive } from '../parts/live.ts'
import { useKnown, useStanding } from '../parts/means.tsx'
import { goInstead } from '../parts/place.ts'
import { Screen } from '../parts/Screen.tsx'
import { beginDraft } from '../record/begin.ts'
import { useWords } from '../words/catalogue.ts'

/** A run of our own robot outside of any match, by who drives it. */
export function Practice() {
  const texts = useWords().choose
  const { database } = useStanding()
  const known = useKnown()
  const before = useLive(async () => (await recall(database, 'practice')) ?? null)
  return (
    <Screen title={texts.practiceTitle}>
      <p className="notice">{texts.practiceCaution}</p>
      {known?.pack && known.me && before !== undefined && (
        <Form before={before ?? { team: known.pack.pack.event.own ?? '', driver: '' }} known={known} />
      )}
    </Screen>
  )
}

function Form(props: { before: { team: string; driver: string }; known: NonNullable<ReturnType<typeof useKnown>> }) {
  const texts = useWords().choose
  const { database } = useStanding()
  const [team, setTeam] = useState(props.before.team)
  const [driver, setDriver] = useState(props.before.driver)
  const [revision, setRevision] = useState('')
  const [tried, setTried] = useState(false)
  const { pack, me } = props.known
  const number = revision.trim() === '' ? undefined : Number(revision)
  const badRevision = number !== undefined && !(Number.isInteger(number) && number > 0 && number <= 1e9)
  const begin = async () => {
    setTried(true)
    if (!pack || !me || team.trim() === '' || driver.trim() === '' || badRevision) return
    await remember(database, 'practice', { team: team.trim(), driver: driver.trim() })
    const about = {
      match: null,
      seat: null,
      team: team.trim(),
      identifiedBy: 'number',
      subject: 'robot',
      origin: 'practice',
      mode: 'timeline',
      driver: driver.trim(),
      ...(number === undefined ? {} : { robotRevision: number }),
    } as const
    goInstead({ screen: 'draft', id: await beginDraft(database, { pack: pack.pack, me, about }) })
  }
  return (
    <>
      <Field
        label={texts.ownTeam}
        inputMode="numeric"
        value={team}
        maxLength={20}
        error={tried && team.trim() === '' ? texts.teamMissing : null}
        change={setTeam}
      />
      <Field
        label={texts.driver}
        value={driver}
        maxLength={40}
        error={tried && driver.trim() === '' ? texts.driverMissing : null}
        change={setDriver}
      />
      <Field
        label={texts.revision}
        help={texts.revisionHelp}
        inputMode="numeric"
        value={revision}
        maxLength={10}
        error={tried && badRevision ? texts.revisionBad(revision) : null}
        change={setRevision}
      />
      <button type="button" className="strong tall" onClick={begin}>
        {texts.go}
      </button>
    </>
  )
}
