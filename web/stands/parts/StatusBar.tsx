import { countsIn } from '../data/outbox.ts'
import { useWords } from '../words/catalogue.ts'
import { useKnown, useOutbox } from './means.tsx'
import { linkTo } from './place.ts'
import { Sign } from './Sign.tsx'

/** How many records are where: always in sight, on every screen. */
export function StatusBar() {
  const texts = useWords().states
  const rows = useOutbox()
  const known = useKnown()
  if (!rows || !known) return <div className="status" />
  const { phone, attention, server } = countsIn(rows, known.session ?? undefined)
  return (
    <a className="status" href={linkTo({ screen: 'records' })} aria-label={texts.counts(phone, attention, server)}>
      <span className={phone > 0 ? 'count' : 'count none'}>
        <Sign state="phone" /> {phone} <small>{texts.phone}</small>
      </span>
      {attention > 0 && (
        <span className="count">
          <Sign state="attention" /> {attention} <small>{texts.attention}</small>
        </span>
      )}
      <span className="count">
        <Sign state="server" /> {server} <small>{texts.server}</small>
      </span>
    </a>
  )
}
