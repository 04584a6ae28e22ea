import { Button } from '@mantine/core'
import { useState } from 'react'
import { voided } from '../../../../src/model/event/order.ts'
import { slotsOf } from '../../../../src/model/event/seats.ts'
import { scheduleColumns } from '../../../../src/model/event/table/columns.ts'
import type { Match } from '../../../../src/model/scouting/types.ts'
import { Empty } from '../../../shell/states.tsx'
import { TableDownload } from '../../../shell/TableDownload.tsx'
import type { TableData } from '../../../tables/table.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName, slotMark, timeOf } from '../names.ts'
import { Said } from '../Said.tsx'
import { BringSchedule } from './BringSchedule.tsx'
import { Looked } from './Looked.tsx'
import { MatchForm } from './MatchForm.tsx'

/** Who plays when: the table, one match's form, and tables that come in. */
export function SchedulePart(page: EventPage) {
  const { event, schedule, results, lead, edit } = page
  const texts = words().event.schedule
  const [open, setOpen] = useState<string | null>(null)
  const matches = schedule.matches.map(({ match }) => match)
  const gone = voided(matches)
  const over = new Set(results.flatMap(({ match, result }) => (result === null ? [] : [match])))
  const opened = schedule.matches.find(({ match }) => match.id === open)
  return (
    <>
      <section className="sheet stack" aria-labelledby="schedule">
        <h2 id="schedule">{words().event.parts.schedule}</h2>
        {edit.trouble && (
          <Said key={edit.trouble} trouble>
            {edit.trouble}
          </Said>
        )}
        {edit.said && (
          <Said key={edit.mark}>
            {edit.said}{' '}
            <button type="button" className="opens" onClick={() => void edit.takeBack()}>
              {texts.undo}
            </button>
          </Said>
        )}
        {matches.length === 0 ? (
          <Empty title={texts.empty}>
            <p>{lead ? texts.emptyHow : texts.emptyWait}</p>
          </Empty>
        ) : (
          <>
            <div
              className="scroll"
              tabIndex={0}
              role="region"
              aria-label={words().event.tableOf(words().event.parts.schedule)}
            >
              <table className="tide schedule-table">
                <thead>
                  <tr>
                    <th scope="col">{texts.match}</th>
                    <th scope="col">{texts.time}</th>
                    {slotsOf(matches[0]!).map(({ seat }) => (
                      <th key={`${seat.alliance}${seat.position}`} scope="col" className={`of-${seat.alliance}`}>
                        {words().event.seatShort(words().event.alliances[seat.alliance], seat.position)}
                      </th>
                    ))}
                    <th scope="col">{texts.state}</th>
                  </tr>
                </thead>
                <tbody>
                  {matches.map((match) => (
                    <tr key={match.id} className={gone.has(match.id) ? 'gone' : undefined}>
                      <th scope="row">
                        {lead ? (
                          <button type="button" className="opens" onClick={() => setOpen(match.id)}>
                            {matchName(match)}
                          </button>
                        ) : (
                          matchName(match)
                        )}
                      </th>
                      <td>{timeOf(match, event.body.startsOn)}</td>
                      {slotsOf(match).map(({ seat, slot }) => (
                        <td key={`${seat.alliance}${seat.position}`} className={`of-${seat.alliance}`}>
                          {slot.team}
                          {slotMark(slot) && <span className="slot-mark">{slotMark(slot)}</span>}
                        </td>
                      ))}
                      <td>{gone.has(match.id) ? texts.voided : over.has(match.id) ? texts.played : texts.toCome}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
            <TableDownload title={words().event.parts.schedule} table={() => scheduleTable(matches)} />
          </>
        )}
        {lead && (
          <div className="row no-print">
            <Button variant="default" onClick={() => window.print()} disabled={matches.length === 0}>
              {texts.print}
            </Button>
          </div>
        )}
      </section>
      {opened && <MatchForm key={opened.match.id} page={page} stored={opened} onClose={() => setOpen(null)} />}
      {edit.looked && <Looked {...page} />}
      {lead && <BringSchedule {...page} />}
    </>
  )
}

/** The schedule with the columns that are read back. */
function scheduleTable(matches: readonly Match[]): TableData {
  const marked = (match: Match, of: (slot: Match['red'][number]) => boolean) =>
    slotsOf(match)
      .filter(({ slot }) => of(slot))
      .map(({ slot }) => slot.team)
      .join(' ')
  return {
    name: 'schedule',
    title: words().event.parts.schedule,
    columns: scheduleColumns.map((name) => ({
      name,
      title: name,
      type: name === 'number' || name === 'play' ? 'integer' : 'string',
    })),
    rows: matches.map((match) => [
      match.phase,
      match.number,
      match.play,
      match.time ?? null,
      ...slotsOf(match).map(({ slot }) => slot.team),
      marked(match, ({ counts }) => !counts),
      marked(match, ({ state }) => state === 'absent'),
      marked(match, ({ state }) => state === 'disqualified'),
    ]),
  }
}
