import type { Problem } from '../../../../src/model/errors.ts'
import type { FileRefused } from '../../../data/exchange.ts'
import { words } from '../../../words/catalogue.ts'

/** Faults that are listed. */
const most = 30

/** Where in a file something is wrong: in tables by table, line and column, else by the fields that lead there. */
function placeOf({ path }: Problem): string {
  const texts = words().exchange
  const [table, line, column] = path
  if (typeof table !== 'string') return ''
  if (typeof line === 'number' && path.length <= 3 && typeof column !== 'number')
    return column === undefined ? texts.line(table, line) : texts.cell(table, line, column)
  return path.join(' › ')
}

/** Why a file was not taken: nothing of it was, and each fault has its place. */
export function Refused(props: { name: string; refused: FileRefused }) {
  const texts = words().exchange
  const { message, problems, found } = props.refused
  return (
    <div role="alert" className="loss stack">
      <p>{texts.refused(props.name)}</p>
      {problems.length === 0 ? (
        <p>{message}</p>
      ) : (
        <ul>
          {problems.slice(0, most).map((problem) => (
            <li key={`${problem.path.join('/')} ${problem.message}`}>
              {texts.fault(placeOf(problem), problem.message)}
            </li>
          ))}
          {found > most && <li>{texts.more(found - most)}</li>}
        </ul>
      )}
    </div>
  )
}
