import type { TeamEstimate } from '../../../../src/model/scouting/estimates/types.ts'
import { words } from '../../../words/catalogue.ts'
import { percent } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { between } from './between.ts'
import { Interval } from './Interval.tsx'
import { NumberMade } from './made/NumberMade.tsx'
import { estimateOf, type Quantity, quantityName, written } from './made/quantity.ts'

/** All numbers of a team, each with how far to trust it. */
export function Numbers({ page, of, all }: { page: EventPage; of: TeamEstimate; all: readonly TeamEstimate[] }) {
  const texts = words().estimates
  const { game } = page
  const sums = (['points', 'attempts', 'finishPoints', 'autonomousPoints'] as const).map((kind) => ({
    what: { kind },
    most: Math.max(...all.map((team) => (team[kind].next80 ?? team[kind].interval95)[1])),
  }))
  const rest: Quantity[] = [
    ...Object.keys(of.finish).map((id): Quantity => ({ kind: 'finish', of: id })),
    { kind: 'leaves' },
    { kind: 'stops' },
    { kind: 'absent' },
  ]
  const rows = [...sums, ...rest.map((what) => ({ what, most: 1 }))].map(({ what, most }) => ({
    ...{ what, most },
    name: quantityName(game, what),
    estimate: estimateOf(of, what)!,
    write: written(what),
  }))
  return (
    <div className="sheet stack">
      <h3>{texts.numbers}</h3>
      {of.neverSeen && <p>{texts.neverSeenHow}</p>}
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.numbers}>
        <table className="tide estimates-table">
          <thead>
            <tr>
              <th scope="col">{texts.quantity}</th>
              <th scope="col" className="figure">
                {texts.expected}
              </th>
              <th scope="col" className="figure">
                {texts.in80}
              </th>
              <th scope="col" className="figure">
                {texts.nextMatch}
              </th>
              <th scope="col" className="figure">
                {texts.own}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ what, name, estimate, write, most }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="figure">
                  <NumberMade page={page} of={of} what={what}>
                    {write(estimate.mean)}
                  </NumberMade>
                </td>
                <td className="figure">
                  {between(estimate, write)}
                  <Interval of={estimate} most={most} label={between(estimate, write)} />
                </td>
                <td className="figure">
                  {estimate.next80 ? texts.between(write(estimate.next80[0]), write(estimate.next80[1])) : '–'}
                </td>
                <td className="figure">{percent(estimate.ownWeight)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.numbersHow(of.matches)}</p>
    </div>
  )
}
