import type { TeamKnown } from '../../../data/estimates.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points, seconds } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { between } from './between.ts'
import { NumberMade } from './made/NumberMade.tsx'
import { SolvedMade } from './made/SolvedMade.tsx'

/** Claimed and watched, one under the other, goal by goal: where they disagree, both stay to be seen. */
export function Sources({ page, known }: { page: EventPage; known: TeamKnown }) {
  const texts = words().estimates
  const { game } = page
  const { estimate, claims } = known
  const goals = game.goals.filter(({ id }) => estimate.goals[id])
  const claim = claims.at(-1)?.claims
  const seen = known.watched.filter(({ absent }) => !absent)
  const average = (goal: string) => seen.reduce((sum, { scored }) => sum + (scored[goal] ?? 0), 0) / seen.length
  return (
    <div className="sheet stack">
      <h3>{texts.sources}</h3>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.sources}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.piecesAMatch}</th>
              {goals.map(({ id, name }) => (
                <th key={id} scope="col" className="figure">
                  {name}
                </th>
              ))}
              <th scope="col" className="figure">
                {texts.columns.trip}
              </th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{texts.claimed}</th>
              {goals.map(({ id }) => (
                <td key={id} className="figure">
                  {claim?.goals?.[id] === undefined ? '–' : plain(claim.goals[id], 1)}
                </td>
              ))}
              <td className="figure">{claim?.cycle === undefined ? '–' : seconds(claim.cycle)}</td>
            </tr>
            <tr>
              <th scope="row">{texts.watched(seen.length)}</th>
              {goals.map(({ id }) => (
                <td key={id} className="figure">
                  {seen.length === 0 ? (
                    '–'
                  ) : (
                    <NumberMade page={page} of={estimate} what={{ kind: 'placed', of: id }}>
                      {points(average(id))}
                    </NumberMade>
                  )}
                </td>
              ))}
              <td className="figure">–</td>
            </tr>
            <tr>
              <th scope="row">{texts.believed}</th>
              {goals.map(({ id }) => {
                const { placed } = estimate.goals[id]!
                return (
                  <td key={id} className="figure">
                    <NumberMade page={page} of={estimate} what={{ kind: 'placed', of: id }}>
                      {points(placed.mean)}
                    </NumberMade>
                    <span className="slot-mark">{between(placed, points)}</span>
                  </td>
                )
              })}
              <td className="figure">
                {estimate.trip ? (
                  <NumberMade page={page} of={estimate} what={{ kind: 'trip' }}>
                    {seconds(estimate.trip.median.mean)}
                  </NumberMade>
                ) : (
                  '–'
                )}
                {estimate.trip && <span className="slot-mark">{between(estimate.trip.median, seconds)}</span>}
              </td>
            </tr>
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.sourcesHow}</p>
      <Solved page={page} known={known} />
    </div>
  )
}

/** What the officials' totals say of the team alone, beside what its records say. */
function Solved({ page, known: { solved, estimate } }: { page: EventPage; known: TeamKnown }) {
  const texts = words().estimates
  const told = (['autonomous', 'goals', 'finishes'] as const).flatMap((category) => {
    const own = solved[category]
    return own ? [{ category, own }] : []
  })
  if (told.length === 0) return <p className="soft">{texts.notSolved}</p>
  const quantities = { autonomous: 'autonomousPoints', goals: 'points', finishes: 'finishPoints' } as const
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.pointsAMatch}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.pointsAMatch}</th>
              {told.map(({ category }) => (
                <th key={category} scope="col" className="figure">
                  {texts.categories[category]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{texts.believed}</th>
              {told.map(({ category }) => (
                <td key={category} className="figure">
                  <NumberMade page={page} of={estimate} what={{ kind: quantities[category] }}>
                    {points(estimate[quantities[category]].mean)}
                  </NumberMade>
                  <span className="slot-mark">{between(estimate[quantities[category]], points)}</span>
                </td>
              ))}
            </tr>
            <tr>
              <th scope="row">{texts.solved(told[0]!.own.totals)}</th>
              {told.map(({ category, own }) => (
                <td key={category} className="figure">
                  <SolvedMade
                    page={page}
                    team={estimate.team}
                    category={category}
                    result={`${points(own.mean)} (${between(own, points)})`}
                  >
                    {points(own.mean)}
                  </SolvedMade>
                  <span className="slot-mark">{between(own, points)}</span>
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.solvedHow}</p>
    </>
  )
}
