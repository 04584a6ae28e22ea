import type { Looks } from '../../../data/looks.ts'
import { words } from '../../../words/catalogue.ts'
import { points, signedPoints } from '../../../words/format.ts'

/** What one look at each is worth, with a bar. */
export function LookTable({ teams, named }: { teams: Looks['teams']; named(id: string): string }) {
  const texts = words().look
  const { column } = texts
  // Bars of next to nothing stay short.
  const most = Math.max(5e-4, ...teams.map(({ worth }) => worth))
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.table}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{column.team}</th>
              <th scope="col" className="look-worth">
                {column.worth}
              </th>
              <th scope="col" className="figure">
                {column.gain}
              </th>
              <th scope="col" className="figure">
                {column.seen}
              </th>
              <th scope="col">{column.next}</th>
            </tr>
          </thead>
          <tbody>
            {teams.map(({ team, worth, mean, sd, matches, next }) => (
              <tr key={team}>
                <th scope="row">{team}</th>
                <td>
                  {worth < 5e-5 ? texts.fewWins : texts.wins(points(1000 * worth))}
                  <svg className="look-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                    <rect width={(100 * worth) / most} height="4" />
                  </svg>
                </td>
                <td className="figure">{texts.gain(signedPoints(100 * mean), points(100 * sd))}</td>
                <td className="figure">{matches}</td>
                <td>{next === null ? texts.none : named(next)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.gainHow}</p>
    </>
  )
}
