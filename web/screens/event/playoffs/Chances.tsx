import type { EventChance, Substitution } from '../../../../src/model/picks/playoffs/index.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, points } from '../../../words/format.ts'

/** Chances of all alliances to win the event. */
export function Chances(props: {
  chances: readonly EventChance[]
  alliances: readonly string[][]
  own: number | null
}) {
  const { chances, alliances, own } = props
  const texts = words().playoffs
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={texts.chancesTable}>
      <table className="tide">
        <thead>
          <tr>
            <th scope="col">{texts.alliance}</th>
            <th scope="col">{texts.robots}</th>
            <th scope="col" className="figure">
              {texts.finals}
            </th>
            <th scope="col" className="figure">
              {texts.wins}
            </th>
          </tr>
        </thead>
        <tbody>
          {chances.map(({ alliance, robots, wins, finals, error }) => {
            const sits = alliances[alliance - 1]!.filter((team) => !robots.includes(team))
            return (
              <tr key={alliance} className={alliance === own ? 'picks-own' : undefined}>
                <th scope="row">{alliance === own ? texts.oursNumbered(alliance) : texts.numbered(alliance)}</th>
                <td>
                  {listed(robots)}
                  {sits.length > 0 && <span className="slot-mark">{texts.sits(listed(sits))}</span>}
                </td>
                <td className="figure">{percent(finals)}</td>
                <td className="figure">
                  {percent(wins)} <span className="soft small">± {points(100 * error)}</span>
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

/** Which three of an alliance of four play best. */
export function Threes({ threes, members }: { threes: readonly Substitution[]; members: readonly string[] }) {
  const texts = words().playoffs
  const [first, second] = threes
  const settled = first && second && first.wins - second.wins > 2 * Math.hypot(first.error, second.error)
  return (
    <>
      <p>{settled ? texts.bestThree(listed(first.robots)) : texts.noBestThree}</p>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.threesTable}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.play}</th>
              <th scope="col">{texts.sitsOut}</th>
              <th scope="col" className="figure">
                {texts.wins}
              </th>
            </tr>
          </thead>
          <tbody>
            {threes.map(({ robots, wins, error }) => (
              <tr key={robots.join()}>
                <th scope="row">{listed(robots)}</th>
                <td>{listed(members.filter((team) => !robots.includes(team)))}</td>
                <td className="figure">
                  {percent(wins)} <span className="soft small">± {points(100 * error)}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  )
}
