import { Button } from '@mantine/core'
import { useEffect, useRef } from 'react'
import { useChanges } from '../../../data/documents.ts'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import { Findings } from '../bring/Faults.tsx'
import type { EventPage } from '../EventFrame.tsx'
import { ChangeList } from './ChangeList.tsx'

/** What an edit would change, before it is applied. */
export function Looked({ event, edit, schedule }: EventPage) {
  const texts = words().event.schedule
  const { save } = useChanges()
  const heading = useRef<HTMLHeadingElement>(null)
  // It stands between the schedule and what it comes from, which may be a screen away.
  useEffect(() => {
    heading.current?.scrollIntoView({ block: 'start' })
    heading.current?.focus({ preventScroll: true })
  }, [])
  if (!edit.looked) return null
  const { matches, remove, preview } = edit.looked
  const wrong = preview.findings.some(({ weight }) => weight === 'wrong')
  const addTeams = async () => {
    const teams = [...event.body.teams, ...preview.unknownTeams.map((team) => ({ team }))]
    const body = { ...event.body, teams }
    await save.mutateAsync({ kind: 'event', id: body.id, name: body.name, body, base: event.revision })
    await edit.look(matches, remove)
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="looked">
      <h2 id="looked" ref={heading} tabIndex={-1}>
        {texts.looked}
      </h2>
      {/* Teams that are not listed come a line later, all at once. */}
      <Findings findings={preview.findings.filter(({ said }) => said.code !== 'unknownTeam')} />
      {preview.unknownTeams.length > 0 && (
        <div className="row">
          <span role="alert" className="loss">
            {texts.unknown(listed(preview.unknownTeams))}
          </span>
          <Button variant="default" loading={save.isPending} onClick={() => void addTeams()}>
            {texts.addTeams(preview.unknownTeams.length)}
          </Button>
        </div>
      )}
      <ChangeList {...preview} matches={[...schedule.matches.map(({ match }) => match), ...matches]} />
      <div className="row">
        <Button disabled={wrong || preview.changes.length === 0} loading={edit.busy} onClick={() => void edit.apply()}>
          {texts.apply(preview.changes.length)}
        </Button>
        <Button variant="default" onClick={() => edit.setLooked(null)}>
          {texts.dont}
        </Button>
      </div>
    </section>
  )
}
