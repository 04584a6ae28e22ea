import type { Finding } from '../../../../src/model/event/check.ts'
import type { CellFault, ReadLine } from '../../../../src/model/event/table/cells.ts'
import { words } from '../../../words/catalogue.ts'

function said(fault: CellFault): string {
  const texts = words().event.bring.faults
  return fault.fault === 'missing' ? texts.missing(fault.column) : texts[fault.fault](fault.column, fault.got)
}

/** Lines that can not be read, each with what is wrong in which of its cells. */
export function LineFaults(props: { lines: readonly ReadLine<unknown>[] }) {
  const texts = words().event.bring
  const broken = props.lines.flatMap((line) => ('faults' in line ? [line] : []))
  if (broken.length === 0) return null
  return (
    <div role="alert" className="loss">
      <p>{texts.broken(broken.length)}</p>
      <ul>
        {broken.map(({ line, faults }) => (
          <li key={line}>
            {texts.line(line)} {faults.map(said).join(' ')}
          </li>
        ))}
      </ul>
    </div>
  )
}

/** What the server found: what is wrong first. */
export function Findings(props: { findings: readonly Finding[] }) {
  const texts = words().event.bring
  const groups = (['wrong', 'odd'] as const).map((weight) => ({
    weight,
    found: props.findings.filter((finding) => finding.weight === weight),
  }))
  return groups.map(({ weight, found }) =>
    found.length === 0 ? null : (
      <div key={weight} role={weight === 'wrong' ? 'alert' : 'status'} className={weight === 'wrong' ? 'loss' : ''}>
        <p>{texts[weight]}</p>
        <ul>
          {found.map(({ message }, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list is never reordered, and sentences may be alike
            <li key={index}>{message}.</li>
          ))}
        </ul>
      </div>
    ),
  )
}
