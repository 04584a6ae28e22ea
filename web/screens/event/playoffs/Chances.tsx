import type { ReactNode } from 'react'
import type { EventChance, Substitution } from '../../../../src/model/picks/playoffs/index.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, percent, points } from '../../../words/format.ts'

interface Row {
  key: string | number
  own?: boolean
  head: string
  robots: ReactNode
  /** Before the chance to win the event. */
  figures: string[]
  wins: number
  error: number
}

/** Alliances, or who plays of one, with their chance to win the event in the last column. */
function WinsTable(props: { label: string; head: string; robots: string; figures: string[]; rows: Row[] }) {
  const { label, head, robots, figures, rows } = props
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label={label}>
      <table className="tide">
        <thead>
          <tr>
            <th scope="col">{head}</th>
            <th scope="col">{robots}</th>
            {[...figures, words().playoffs.wins].map((figure) => (
              <th key={figure} scope="col" className="figure">
                {figure}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className={row.own ? 'picks-own' : undefined}>
              <th scope="row">{row.head}</th>
              <td>{row.robots}</td>
              {row.figures.map((figure, k) => (
                <td key={figures[k]} className="figure">
                  {figure}
                </td>
              ))}
              <td className="figure">
                {percent(row.wins)} <span className="soft small">± {points(100 * row.error)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Chances of all alliances to win the event. */
export function Chances(props: {
  chances: readonly EventChance[]
  alliances: readonly string[][]
  own: number | null
}) {
  const { chances, alliances, own } = props
  const texts = words().playoffs
  return (
    <WinsTable
      label={texts.chancesTable}
      head={texts.alliance}
      robots={texts.robots}
      figures={[texts.finals]}
      rows={chances.map(({ alliance, robots, wins, finals, error }) => {
        const sits = alliances[alliance - 1]!.filter((team) => !robots.includes(team))
        return {
          ...{ key: alliance, own: alliance === own, figures: [percent(finals)], wins, error },
          head: alliance === own ? texts.oursNumbered(alliance) : texts.numbered(alliance),
          robots: (
            <>
              {listed(robots)}
              {sits.length > 0 && <span className="slot-mark">{texts.sits(listed(sits))}</span>}
            </>
          ),
        }
      })}
    />
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
      <WinsTable
        label={texts.threesTable}
        head={texts.play}
        robots={texts.sitsOut}
        figures={[]}
        rows={threes.map(({ robots, wins, error }) => ({
          ...{ key: robots.join(), head: listed(robots), figures: [], wins, error },
          robots: listed(members.filter((team) => !robots.includes(team))),
        }))}
      />
    </>
  )
}
