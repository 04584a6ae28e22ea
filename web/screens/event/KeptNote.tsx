import type { Typed } from '../../data/useTyped.ts'
import { words } from '../../words/catalogue.ts'

/** Says that a form stands as it was left, and lets it begin afresh. */
export function KeptNote({ kept, forget }: Pick<Typed<unknown>, 'kept' | 'forget'>) {
  const texts = words().records.correct
  if (!kept) return null
  return (
    <p role="status">
      {texts.kept}{' '}
      <button type="button" className="opens" onClick={forget}>
        {texts.afresh}
      </button>
    </p>
  )
}
