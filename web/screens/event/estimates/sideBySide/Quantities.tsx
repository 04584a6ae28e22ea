import type { SideBySide } from '../../../../../src/model/scouting/estimates/sideBySide.ts'
import {
  type Compared,
  compared,
  type Estimate,
  type TeamEstimate,
} from '../../../../../src/model/scouting/estimates/types.ts'
import { words } from '../../../../words/catalogue.ts'
import { percent, points, seconds } from '../../../../words/format.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { between } from '../between.ts'
import { Interval } from '../Interval.tsx'
import { NumberMade } from '../made/NumberMade.tsx'

/** Each quantity with all teams on one scale, the best first, and the chance of each to be better than the next. */
export function Quantities(props: { page: EventPage; shown: SideBySide; all: readonly TeamEstimate[] }) {
  const { shown } = props
  const texts = words().sideBySide
  return (
    <>
      {compared.map(
        (quantity) => shown.better[quantity] && <OneQuantity key={quantity} quantity={quantity} {...props} />,
      )}
      <p className="soft">{texts.how}</p>
    </>
  )
}

interface Row {
  team: string
  /** Place among the teams as they were asked for. */
  at: number
  estimate: Estimate
  of: TeamEstimate
}

function OneQuantity(props: { page: EventPage; shown: SideBySide; all: readonly TeamEstimate[]; quantity: Compared }) {
  const { page, shown, all, quantity } = props
  const { sideBySide: texts, estimates } = words()
  const write = quantity === 'trip' ? seconds : points
  const rows = shown.teams.flatMap((team, at): Row[] => {
    const of = all.find((each) => each.team === team)
    const estimate = quantity === 'total' ? shown.total[at] : quantity === 'trip' ? of?.trip?.median : of?.[quantity]
    return of && estimate ? [{ team, at, estimate, of }] : []
  })
  const sign = quantity === 'trip' ? 1 : -1
  rows.sort((a, b) => sign * (a.estimate.mean - b.estimate.mean))
  const end = Math.max(...rows.map(({ estimate }) => estimate.interval95[1]))
  const name = quantity === 'total' ? texts.total : estimates.columns[quantity]
  return (
    <section className="stack one-quantity" aria-label={texts.quantity(name)}>
      <h3>{name}</h3>
      {quantity === 'total' && <p className="soft small">{texts.totalHow}</p>}
      <ol className="beside-rows">
        {rows.map(({ team, at, estimate, of }, index) => {
          const next = rows[index + 1]
          const chance = next && shown.better[quantity]?.[at]?.[next.at]
          return (
            <li key={team}>
              <strong>{team}</strong>
              <span className="beside-value">
                {quantity === 'total' ? (
                  write(estimate.mean)
                ) : (
                  <NumberMade page={page} of={of} what={{ kind: quantity }}>
                    {write(estimate.mean)}
                  </NumberMade>
                )}{' '}
                <span className="soft small">{between(estimate, write)}</span>
              </span>
              <Interval of={estimate} most={end} label={`${team}: ${between(estimate, write)}`} />
              {next && chance !== undefined && (
                <span className="small beside-better">{texts.better(percent(chance), next.team)}</span>
              )}
            </li>
          )
        })}
      </ol>
      <p className="soft small">{texts.scale(write(0), write(end))}</p>
    </section>
  )
}
