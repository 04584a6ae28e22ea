import { useState } from 'react'
import type { MadeOfTeam } from '../../../../../src/model/scouting/estimates/made.ts'
import type { TeamEstimate } from '../../../../../src/model/scouting/estimates/types.ts'
import { useMade } from '../../../../data/estimates.ts'
import { Panel } from '../../../../shell/Panel.tsx'
import { Loading, Trouble } from '../../../../shell/states.tsx'
import { words } from '../../../../words/catalogue.ts'
import { percent } from '../../../../words/format.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { useHalfLifeSaid } from '../useHalfLifeSaid.ts'
import { MadeMatches } from './MadeMatches.tsx'
import { partsOf } from './parts.ts'
import { estimateOf, madeIn, type Quantity, quantityName, written } from './quantity.ts'

/** How a number of a team came about: formula, parts, own matches with their records. A part that opens takes the panel over. */
export function MadePanel(props: { page: EventPage; of: TeamEstimate; what: Quantity; onClose(): void }) {
  const { page, of } = props
  const texts = words().made
  const [way, setWay] = useState<readonly Quantity[]>([props.what])
  const what = way.at(-1)!
  const made = useMade(page.event.id, of.team)
  const halfLifeSaid = useHalfLifeSaid(page.event.id)
  const estimate = estimateOf(of, what)
  const write = written(what)
  return (
    <Panel title={words().explain.opened} open onClose={props.onClose} side>
      {way.length > 1 && (
        <div>
          <button type="button" className="plain-button" onClick={() => setWay(way.slice(0, -1))}>
            {texts.back}
          </button>
        </div>
      )}
      <h3>{texts.title(quantityName(page.game, what), of.team)}</h3>
      {estimate && (
        <p>
          <strong>{texts.result(write(estimate.mean), ...(estimate.interval80.map(write) as [string, string]))}</strong>
        </p>
      )}
      <p>{formula(what)}</p>
      <Parts page={page} of={of} what={what} open={(next) => setWay([...way, next])} />
      {made.error && !made.data ? (
        <Trouble title={texts.trouble} error={made.error} retry={() => void made.refetch()} />
      ) : made.data ? (
        <>
          <Means made={made.data} what={what} total={estimate ? write(estimate.mean) : '–'} />
          <MadeMatches page={page} team={of.team} made={made.data} what={what} />
        </>
      ) : (
        <Loading what={texts.what} />
      )}
      <p className="soft small">
        {texts.source(of.matches, page.game.name, page.revision)} {halfLifeSaid}
      </p>
    </Panel>
  )
}

function formula({ kind }: Quantity): string {
  const { formula: all } = words().made
  return kind in all ? all[kind as keyof typeof all] : all.mean
}

function Parts(props: { page: EventPage; of: TeamEstimate; what: Quantity; open(next: Quantity): void }) {
  const { page, of, what } = props
  const texts = words().made
  const parts = partsOf(page.game, of, what)
  if (parts.length === 0) return null
  return (
    <>
      <table className="tide">
        <caption>{words().explain.parts}</caption>
        <tbody>
          {parts.map(({ label, note, value, opens }) => (
            <tr key={label}>
              <th scope="row">
                {opens ? (
                  <button type="button" className="opens" onClick={() => props.open(opens)}>
                    {label}
                  </button>
                ) : (
                  label
                )}
                {note && <div className="soft small">{note}</div>}
              </th>
              <td className="figure">{value}</td>
            </tr>
          ))}
          <tr className="total">
            <th scope="row">{texts.number}</th>
            <td className="figure">{written(what)(estimateOf(of, what)?.mean ?? 0)}</td>
          </tr>
        </tbody>
      </table>
      <p className="soft small">{texts.sumHow}</p>
    </>
  )
}

/** Own matches, the team and the event, each with what it says and its share. */
function Means({ made, what, total }: { made: MadeOfTeam; what: Quantity; total: string }) {
  const texts = words().made
  const of = madeIn(made, what)
  if (!of) return null
  const write = written(what)
  const rows = (['own', 'claimed', 'event'] as const).flatMap((who) => {
    const part = of[who]
    return part && part.share > 0 ? [{ who, ...part }] : []
  })
  return (
    <table className="tide">
      <caption>{words().explain.parts}</caption>
      <thead>
        <tr>
          <th scope="col">{texts.says}</th>
          <th scope="col" className="figure">
            {texts.mean}
          </th>
          <th scope="col" className="figure">
            {texts.share}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ who, mean, share }) => (
          <tr key={who}>
            <th scope="row">{texts[who]}</th>
            <td className="figure">{write(mean)}</td>
            <td className="figure">{percent(share)}</td>
          </tr>
        ))}
        <tr className="total">
          <th scope="row">{texts.number}</th>
          <td className="figure">{total}</td>
          <td />
        </tr>
      </tbody>
    </table>
  )
}
