import { Button } from '@mantine/core'
import { useState } from 'react'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { Empty } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { nameOfMatch, nameOfPerson } from '../matchNames.ts'
import { seatName } from '../names.ts'
import type { Looked } from '../records/RecordPanel.tsx'
import type { Board } from './useBoard.ts'

/** By shape too, so that the states can not be confused without colour. */
const signs = { received: '●', expected: '◌', late: '✕', unwatched: '–' } as const

/** Matches that matter now: the last ones played and the next ones, and any of which something is missing. */
function nearNow(matches: Board['matches']): Board['matches'] {
  const last = matches.findLastIndex(({ played }) => played)
  return matches.filter(
    ({ seats }, index) =>
      (index > last - 5 && index <= last + 4) ||
      seats.some(({ state, records }) => state === 'late' || records.length > 1),
  )
}

/** Match by match and place by place: who was to watch, and what has arrived. */
export function Expected(props: { pack: StandsPack; board: Board; look(looked: Looked): void }) {
  const { pack, board, look } = props
  const texts = words().board
  const people = { people: board.people }
  const [all, setAll] = useState(false)
  const near = nearNow(board.matches)
  const shown = all ? board.matches : near
  return (
    <section className="sheet stack" aria-labelledby="expected">
      <h2 id="expected">{texts.expected}</h2>
      {board.matches.length === 0 && (
        <Empty title={texts.noMatches}>
          <p>{texts.noMatchesHelp}</p>
        </Empty>
      )}
      {board.matches.length > 0 && (
        <>
          <p className="small">
            {Object.entries(signs).map(([state, sign]) => (
              <span key={state} className="board-key">
                <span aria-hidden="true">{sign}</span> {texts.states[state as keyof typeof signs]}
              </span>
            ))}
          </p>
          <div className="scroll" tabIndex={0} role="region" aria-label={words().event.tableOf(texts.expected)}>
            <table className="tide board-table">
              <thead>
                <tr>
                  <th scope="col">{texts.match}</th>
                  {board.matches[0]!.seats.map(({ seat: { alliance, position } }) => (
                    <th key={`${alliance}${position}`} scope="col">
                      {texts.place[alliance](position)}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {shown.map(({ match, seats }) => (
                  <tr key={match}>
                    <th scope="row">
                      <button
                        type="button"
                        className="opens"
                        aria-label={texts.lookAtMatch(nameOfMatch(pack, match))}
                        onClick={() => look({ match, team: null, ids: null })}
                      >
                        {nameOfMatch(pack, match)}
                      </button>
                    </th>
                    {seats.map(({ seat, team, person, state, records, chosen }) => (
                      <td key={`${seat.alliance}${seat.position}`} className={`board-${state}`}>
                        <span aria-hidden="true">{signs[state]}</span>{' '}
                        {records.length === 0 ? (
                          team
                        ) : (
                          <button
                            type="button"
                            className="opens"
                            aria-label={texts.lookAt(nameOfMatch(pack, match), seatName(seat), team)}
                            onClick={() => look({ match, team, ids: null })}
                          >
                            {team}
                          </button>
                        )}
                        <span className="small board-who">
                          {/* What is missing has to be seen at once; of the rest the sign and who watches are enough. */}
                          <span className={state === 'late' ? undefined : 'visually-hidden'}>
                            {texts.states[state]}
                            {person !== null && ', '}
                          </span>
                          {person !== null && nameOfPerson(people, person)}
                          {records.length > 1 &&
                            ` (${chosen ? texts.oneOf(records.length) : texts.records(records.length)})`}
                        </span>
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {near.length < board.matches.length && (
            <div>
              <Button variant="default" onClick={() => setAll(!all)}>
                {all ? texts.onlyNear : texts.allMatches(board.matches.length)}
              </Button>
            </div>
          )}
        </>
      )}
    </section>
  )
}
