import type { KeptOverride } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import { points } from '../../words/format.ts'
import './overrides.css'

/** The sign of a number that somebody set. */
export function OwnMark() {
  return <span className="own-mark">{words().overrides.mark}</span>
}

/** What had been computed for an option's points, struck through, before its own number; nothing where none is set. */
export function Struck(props: { kept: readonly KeptOverride[] | undefined; option: string }) {
  const found = props.kept?.find((one) => one.kind === 'points' && one.option === props.option)
  if (!found) return null
  return (
    <>
      <span className="visually-hidden">{words().overrides.computed} </span>
      <s>{points(found.computed)}</s> <OwnMark />{' '}
    </>
  )
}
