import type { EarlierChange, Estimate } from '../../../../src/model/scouting/estimates/index.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points, signedPoints } from '../../../words/format.ts'

/** What an earlier event changes about each team, the largest difference first. */
export function EarlierTable({ teams }: { teams: readonly EarlierChange[] }) {
  const texts = words().earlier
  const by = ({ with: together, without }: EarlierChange) => together.points.mean - without.points.mean
  const rows = [...teams].sort((a, b) => Math.abs(by(b)) - Math.abs(by(a)))
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.caption}>
        <table className="tide">
          <caption>{texts.caption}</caption>
          <thead>
            <tr>
              <th scope="col">{texts.team}</th>
              {[texts.matches, texts.worth, texts.alone, texts.together, texts.more].map((head) => (
                <th key={head} scope="col" className="figure">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.team}>
                <th scope="row">
                  {row.team}
                  {row.changes > 0 && <div className="soft small">{texts.changes(row.changes)}</div>}
                </th>
                <td className="figure">
                  {row.matches} + {row.before}
                </td>
                <td className="figure">{plain(row.worth, 1)}</td>
                <td className="figure">{rangeOf(row.without.points)}</td>
                <td className="figure">{rangeOf(row.with.points)}</td>
                <td className="figure">{signedPoints(by(row))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft small">{texts.rangeHow}</p>
    </>
  )
}

const rangeOf = ({ mean, interval80: [low, high] }: Estimate): string =>
  words().earlier.range(points(mean), points(low), points(high))
