import { seatKey, seats, slotAt } from '../../../../src/model/event/seats.ts'
import type { Assignment, Match } from '../../../../src/model/scouting/types.ts'
import type { TableData } from '../../../tables/table.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { allianceName, matchName, seatName, timeOf } from '../names.ts'

/** Matches by seats, with who watches each; a lead chooses in place. */
export function WatchGrid(props: {
  page: EventPage
  matches: readonly Match[]
  over: ReadonlySet<string>
  assignments: readonly Assignment[]
  onChange: ((assignment: Assignment) => void) | null
}) {
  const texts = words().event.watch
  const { page, matches, over, onChange } = props
  const { people } = page.watching
  const names = new Map(people.map(({ id, nickname }) => [id, nickname]))
  const by = new Map(props.assignments.map((each) => [`${each.match} ${seatKey(each.seat)}`, each.person]))
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={words().event.tableOf(words().event.parts.watch)}>
      <table className="tide watch-grid">
        <thead>
          <tr>
            <th scope="col">{words().event.schedule.match}</th>
            {seats.map((seat) => (
              <th key={seatKey(seat)} scope="col" className={`of-${seat.alliance}`}>
                {words().event.seatShort(allianceName(seat.alliance), seat.position)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {matches.map((match) => {
            const there = seats.map((seat) => by.get(`${match.id} ${seatKey(seat)}`) ?? null)
            return (
              <tr key={match.id}>
                <th scope="row">
                  {matchName(match)}
                  <span className="slot-mark">{timeOf(match, page.event.body.startsOn)}</span>
                </th>
                {seats.map((seat, index) => {
                  const person = there[index] ?? null
                  const twice = person !== null && there.filter((each) => each === person).length > 1
                  return (
                    <td key={seatKey(seat)} className={`of-${seat.alliance}`}>
                      <span className="slot-mark">
                        {/* On a phone, where the table has no columns to say it. */}
                        <span className="watch-seat">
                          {words().event.seatShort(allianceName(seat.alliance), seat.position)} ·{' '}
                        </span>
                        {slotAt(match, seat).team}
                      </span>
                      {onChange && !over.has(match.id) && (
                        <select
                          className="no-print"
                          aria-label={texts.watches(matchName(match), seatName(seat))}
                          aria-invalid={twice}
                          value={person ?? ''}
                          onChange={(event) =>
                            onChange({ match: match.id, seat, person: event.currentTarget.value || null })
                          }
                        >
                          <option value="">{texts.none}</option>
                          {people.map(({ id, nickname }) => (
                            <option key={id} value={id}>
                              {nickname}
                            </option>
                          ))}
                          {person !== null && !names.has(person) && <option value={person}>{texts.left}</option>}
                        </select>
                      )}
                      {/* On paper a name of any length is a text, which wraps. */}
                      <span className={onChange && !over.has(match.id) ? 'watch-name' : undefined}>
                        {(person && (names.get(person) ?? texts.left)) || '–'}
                      </span>
                      {twice && <span className="loss small"> {texts.twice}</span>}
                    </td>
                  )
                })}
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

/** Who watches whom as a file: a line a seat. */
export function watchTable({ schedule, watching }: EventPage, assignments: readonly Assignment[]): TableData {
  const texts = words().event
  const names = new Map(watching.people.map(({ id, nickname }) => [id, nickname]))
  const by = new Map(assignments.map((each) => [`${each.match} ${seatKey(each.seat)}`, each.person]))
  return {
    name: 'who_watches_whom',
    title: texts.parts.watch,
    columns: [
      { name: 'phase', title: 'phase', type: 'string' },
      { name: 'number', title: 'number', type: 'integer' },
      { name: 'play', title: 'play', type: 'integer' },
      { name: 'alliance', title: 'alliance', type: 'string' },
      { name: 'position', title: 'position', type: 'integer' },
      { name: 'team', title: 'team', type: 'string' },
      { name: 'scout', title: 'scout', type: 'string' },
    ],
    rows: schedule.matches.flatMap(({ match }) =>
      seats.map((seat) => {
        const person = by.get(`${match.id} ${seatKey(seat)}`) ?? null
        const { team } = slotAt(match, seat)
        const { phase, number, play } = match
        return [phase, number, play, seat.alliance, seat.position, team, person && (names.get(person) ?? person)]
      }),
    ),
  }
}
