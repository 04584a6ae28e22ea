import type { MatchWorth } from '../../../../src/model/picks/seeds/types.ts'
import { words } from '../../../words/catalogue.ts'
import { percent, points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'
import { upTo } from './Found.tsx'

/** A bonus this much nearer to a win than not is no difference. */
const alike = 0.1

/** What each of our matches to come is worth, and whether a bonus is worth more than the win's safety. */
export function OurMatches({ page, ours }: { page: EventPage; ours: readonly MatchWorth[] }) {
  const texts = words().seeds
  if (ours.length === 0) return <p>{texts.noMatches}</p>
  const names = new Map(page.schedule.matches.map(({ match }) => [match.id, matchName(match)]))
  const bonuses = page.game.bonuses.filter(({ id }) => ours[0]?.bonuses.some(({ bonus }) => bonus === id))
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.matches}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.match}</th>
              <th scope="col" className="figure">
                {texts.win}
              </th>
              <th scope="col" className="figure">
                {texts.worth}
              </th>
              {bonuses.map(({ id, name }) => (
                <th key={id} scope="col" className="figure">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ours.map((match) => (
              <tr key={match.match}>
                <th scope="row">{names.get(match.match) ?? match.match}</th>
                <td className="figure">{percent(match.win + match.tie / 2)}</td>
                <td className="figure">{texts.places(points(match.worth.places), upTo(match.worth.error))}</td>
                {bonuses.map(({ id }) => {
                  const bonus = match.bonuses.find((each) => each.bonus === id)
                  return (
                    <td key={id} className="figure">
                      {bonus ? texts.bonusCell(percent(bonus.chance), points(bonus.worth.places)) : '–'}
                    </td>
                  )
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {bonuses.map(({ id, name }) => (
        <p key={id}>{weighed(ours, id, name)}</p>
      ))}
      <p className="soft">{texts.matchesHow}</p>
    </>
  )
}

/** A point of the bonus's chance against one of the win's, over all our matches. */
function weighed(ours: readonly MatchWorth[], id: string, name: string): string {
  const texts = words().seeds
  const winning = ours.reduce((sum, { worth }) => sum + worth.places, 0)
  const bonus = ours.reduce(
    (sum, { bonuses }) => sum + (bonuses.find((each) => each.bonus === id)?.worth.places ?? 0),
    0,
  )
  if (!(winning > 0.05 * ours.length)) return `${name}: ${texts.verdict.none}`
  const share = bonus / winning
  const verdict = share > 1 + alike ? 'more' : share < 1 - alike ? 'less' : 'alike'
  return `${texts.bonusMore(name, percent(share))} ${texts.verdict[verdict]}`
}
