import { Button } from '@mantine/core'
import type { SelectionLog } from '../../../data/selection.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import { gainSaid } from './OrderList.tsx'
import { moved, type OwnRow, ownRows } from './ownOrder.ts'
import type { OrderNow } from './useOrder.ts'

/** So many are shown; who is further down is not looked at while names are called. */
const shown = 24

/** Our own order by hand beside the computed one, with what each place costs. */
export function OwnOrder(props: { event: string; log: SelectionLog; now: OrderNow }) {
  const { event, log, now } = props
  const texts = words().picks
  const kept = log.protocol.order
  const { typed, type, forget } = useTyped<readonly string[] | null>(
    `picks/${event}/order/${log.protocol.newest.order}`,
    null,
  )
  const order = typed ?? kept
  const rows = ownRows(order, now)
  const changed = typed !== null && typed.join() !== kept.join()
  const dearest = rows.reduce<OwnRow | null>(
    (most, row) => ((row.cost?.by.mean ?? 0) > (most?.cost?.by.mean ?? 0) ? row : most),
    null,
  )
  return (
    <section className="sheet stack" aria-labelledby="own-order">
      <h2 id="own-order">{texts.ownOrder}</h2>
      <p>
        {kept.length === 0 && !changed
          ? texts.noOwnOrder
          : dearest?.cost
            ? texts.dearest(dearest.team, dearest.cost.before, gainSaid(dearest.cost.by.mean))
            : texts.costsNothing}
      </p>
      <ol className="picks-own-order">
        {rows.slice(0, shown).map((row, k) => (
          <li key={row.team}>
            <span className="numeral">{row.team}</span>{' '}
            <span className="soft small">{texts.computedPlace(row.computed ?? 0)}</span>
            <span className="picks-moves no-print">
              <button
                type="button"
                aria-label={texts.up(row.team)}
                disabled={k === 0}
                onClick={() => type(moved(rows, row.team, -1))}
              >
                ↑
              </button>
              <button
                type="button"
                aria-label={texts.down(row.team)}
                disabled={k === rows.length - 1}
                onClick={() => type(moved(rows, row.team, 1))}
              >
                ↓
              </button>
            </span>
            {row.cost && (
              <span className="small picks-cost">
                {texts.cost(
                  row.cost.before,
                  gainSaid(row.cost.by.mean),
                  gainSaid(row.cost.by.low),
                  gainSaid(row.cost.by.high),
                )}
              </span>
            )}
          </li>
        ))}
      </ol>
      <div className="row no-print">
        <Button
          disabled={!changed}
          onClick={() => {
            log.write({ kind: 'order', teams: [...(typed ?? [])] })
            forget()
          }}
        >
          {texts.keepOrder}
        </Button>
        {changed && (
          <Button variant="default" onClick={forget}>
            {texts.discard}
          </Button>
        )}
        {kept.length > 0 && !changed && (
          <Button variant="default" onClick={() => log.write({ kind: 'order', teams: [] })}>
            {texts.asComputed}
          </Button>
        )}
      </div>
    </section>
  )
}
