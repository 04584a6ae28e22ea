import { Button, Checkbox, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { neededForSchedule, scheduleColumns } from '../../../../src/model/event/table/columns.ts'
import { placeMatches, readSchedule } from '../../../../src/model/event/table/schedule.ts'
import { type Phase, phases } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { LineFaults } from '../bring/Faults.tsx'
import { TableInput } from '../bring/TableInput.tsx'
import { useTable } from '../bring/useTable.ts'
import type { EventPage } from '../EventFrame.tsx'
import { offsetOn } from './offset.ts'

/** A schedule from a pasted table or a file: read line by line, looked at by the server, then applied. */
export function BringSchedule(props: EventPage) {
  const { event, schedule, edit } = props
  const texts = words().event.schedule
  const of = useTable(scheduleColumns, `schedule/${event.id}`)
  const [phase, setPhase] = useState<Phase>('qualification')
  const [whole, setWhole] = useState(false)
  const { startsOn } = event.body
  const lines = of.table
    ? readSchedule(of.table.rows, of.columns, { phase, day: startsOn, offset: offsetOn(startsOn) })
    : []
  const existing = schedule.matches.map(({ match }) => match)
  const told = lines.flatMap((line) => ('read' in line ? [line.read] : []))
  const matches = placeMatches(told, existing, of.columns)
  const missing = neededForSchedule.some((column) => of.columns[column] === undefined)
  const look = () => {
    const [ids, inTable] = [new Set(matches.map(({ id }) => id)), new Set(matches.map((match) => match.phase))]
    const remove = existing.filter((match) => inTable.has(match.phase) && !ids.has(match.id)).map(({ id }) => id)
    void edit.look(matches, whole ? remove : [])
  }
  const forget = () => edit.setLooked(null)
  return (
    <section className="sheet stack no-print" aria-labelledby="bring-schedule">
      <h2 id="bring-schedule">{texts.bring}</h2>
      <p>{texts.bringHelp}</p>
      <TableInput
        label={texts.table}
        help={texts.tableHelp}
        of={{
          ...of,
          take: (text) => {
            forget()
            of.take(text)
          },
          choose: (column, place) => {
            forget()
            of.choose(column, place)
          },
        }}
        known={scheduleColumns}
        needed={neededForSchedule}
        busy={edit.busy}
      />
      {of.table && (
        <>
          <div className="row">
            <NativeSelect
              label={texts.phase}
              value={phase}
              data={phases.map((each) => ({ value: each, label: words().event.phases[each] }))}
              onChange={(change) => {
                forget()
                setPhase(change.currentTarget.value as Phase)
              }}
            />
            <Checkbox
              label={texts.whole}
              checked={whole}
              onChange={(change) => {
                forget()
                setWhole(change.currentTarget.checked)
              }}
            />
          </div>
          {!missing && <LineFaults lines={lines} />}
          <div>
            <Button disabled={missing || told.length === 0} loading={edit.busy} onClick={look}>
              {texts.lookAt(told.length)}
            </Button>
          </div>
        </>
      )}
    </section>
  )
}
