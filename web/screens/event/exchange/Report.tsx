import { Link } from 'wouter'
import type { ContentDifference } from '../../../../src/model/event/archive/index.ts'
import type { Alliance, Position } from '../../../../src/model/scouting/types.ts'
import type { Brought } from '../../../data/exchange.ts'
import { words } from '../../../words/catalogue.ts'
import { matchName, seatName } from '../names.ts'

/** Whether everything of the file is here already, or stays out. */
export const isNothing = ({ parts, conflicts, back }: Brought): boolean =>
  !back && conflicts.length === 0 && parts.every(({ added }) => added === 0)

/** Differences that are listed; two servers that went apart can have hundreds. */
const most = 30

const keyOf = ({ part, id, detail = '' }: ContentDifference): string => `${part} ${id} ${detail}`

/** What differs, by the names that people know. */
function different({ part, id, match, detail = '' }: ContentDifference): string {
  const texts = words().exchange
  const what = match ? matchName(match) : part === 'event' ? '' : id
  const [alliance, position] = detail.split('.')
  const seat =
    part === 'assignments' && seatName({ alliance: alliance as Alliance, position: Number(position) as Position })
  return texts.different(texts.parts[part], what, seat || (part === 'rules' ? texts.revision(detail) : detail))
}

/** What a file changes: what is new, what was here, what is kept apart and what stays although the file says otherwise. */
export function Report(props: { report: Brought; done: boolean }) {
  const { report, done } = props
  const texts = words().exchange
  const told = report.parts.filter(({ added, already }) => added + already > 0)
  const differs = [...new Map(report.differs.map((each) => [keyOf(each), each])).values()]
  const { conflicts } = report
  return (
    <>
      {isNothing(report) && <p>{texts.nothing}</p>}
      {report.back && <p>{texts.back}</p>}
      {told.length > 0 && (
        <div className="scroll" tabIndex={0} role="region" aria-label={texts.table}>
          <table className="tide">
            <thead>
              <tr>
                <th scope="col">{texts.part}</th>
                <th scope="col">{done ? texts.added : texts.wouldAdd}</th>
                <th scope="col">{texts.already}</th>
              </tr>
            </thead>
            <tbody>
              {told.map(({ part, added, already }) => (
                <tr key={part}>
                  <th scope="row">{texts.parts[part]}</th>
                  <td>{added}</td>
                  <td>{already}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {conflicts.length > 0 && (
        <p>
          {texts.conflicts(conflicts.length)}{' '}
          {done && <Link href={`/event/${report.event.id}/board`}>{texts.toBoard}</Link>}
        </p>
      )}
      {differs.length > 0 && (
        <>
          <p>{texts.differs(differs.length)}</p>
          <ul>
            {differs.slice(0, most).map((each) => (
              <li key={keyOf(each)}>{different(each)}</li>
            ))}
            {differs.length > most && <li>{texts.more(differs.length - most)}</li>}
          </ul>
        </>
      )}
    </>
  )
}
