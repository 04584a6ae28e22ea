import type { EventRanking, RankingRow } from '../../../../src/model/event/ranking/types.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { allianceName, matchName } from '../names.ts'
import { criterionName } from './RankingPart.tsx'

/** How a team's row came about: what each of its matches brought, and the sums. */
export function Shares({ page, row, ranking }: { page: EventPage; row: RankingRow; ranking: EventRanking }) {
  const texts = words().event.ranking
  const { criteria, per } = ranking
  const matches = new Map(page.schedule.matches.map(({ match }) => [match.id, match]))
  const bonusName = (id: string) => page.game.bonuses.find((bonus) => bonus.id === id)?.name ?? id
  return (
    <table className="tide small">
      <caption>{texts.cameAbout(row.team)}</caption>
      <thead>
        <tr>
          <th scope="col">{words().event.schedule.match}</th>
          <th scope="col">{texts.how}</th>
          {criteria.map((criterion) => (
            <th key={JSON.stringify(criterion)} scope="col" className="figure">
              {criterionName(criterion, page.game)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {row.shares.map((share) => {
          const match = matches.get(share.match)
          const bonuses = share.bonuses.map(bonusName)
          return (
            <tr key={share.match}>
              <th scope="row">{match ? matchName(match) : share.match}</th>
              <td>{[allianceName(share.alliance), texts.as[share.as], ...bonuses].join(', ')}</td>
              {share.brought.map((value, index) => (
                <td key={JSON.stringify(criteria[index])} className="figure">
                  {share.as === 'apart' ? '–' : plain(value, 1)}
                </td>
              ))}
            </tr>
          )
        })}
        <tr className="total">
          <th scope="row">{texts.sum}</th>
          <td>{per === 'match' ? texts.dividedBy(row.played) : ''}</td>
          {row.sums.map((sum, index) => (
            <td key={JSON.stringify(criteria[index])} className="figure">
              {plain(sum, 1)}
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  )
}
