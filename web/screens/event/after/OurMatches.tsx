import type { AfterReport } from '../../../../src/model/event/after/types.ts'
import { words } from '../../../words/catalogue.ts'
import { percent, plain, points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'

/** Our matches, each with what was said before and what came. */
export function OurMatches({ page, report }: { page: EventPage; report: AfterReport }) {
  const texts = words().after
  const names = new Map(page.schedule.matches.map(({ match }) => [match.id, matchName(match)]))
  return (
    <>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.ours}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.match}</th>
              {[texts.chance, texts.score, texts.came].map((head) => (
                <th key={head} scope="col" className="figure">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {report.matches.map(({ match, forecast, result }) => (
              <tr key={match}>
                <th scope="row">{names.get(match) ?? match}</th>
                <td className="figure">{forecast ? percent(forecast.win) : texts.notForecast}</td>
                <td className="figure">
                  {forecast
                    ? texts.range(points(forecast.mean), plain(forecast.interval80[0]), plain(forecast.interval80[1]))
                    : '–'}
                </td>
                <td className="figure">
                  {result ? texts.result(plain(result.ours, 1), plain(result.theirs, 1)) : texts.waiting}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.oursHow}</p>
    </>
  )
}
