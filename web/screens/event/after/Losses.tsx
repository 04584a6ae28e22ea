import type { AfterReport } from '../../../../src/model/event/after/types.ts'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { tripsSaid } from './said.ts'

/** Where our robot lost its time, most first, with a bar each. */
export function Losses({ report }: { report: AfterReport }) {
  const texts = words().after
  if (report.watched === 0) return <p>{texts.noTime}</p>
  const most = Math.max(1, ...report.losses.map((loss) => Math.abs(loss.seconds)))
  return (
    <>
      <p>{tripsSaid(report) ?? texts.noField}</p>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.time}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.loss}</th>
              <th scope="col" className="figure">
                {texts.seconds}
              </th>
              <th scope="col" className="figure">
                {texts.inMatches}
              </th>
            </tr>
          </thead>
          <tbody>
            {report.losses.map((loss) => (
              <tr key={loss.kind}>
                <th scope="row">
                  {loss.kind === 'slower' && loss.seconds < 0 ? texts.quicker : texts.losses[loss.kind]}
                  <svg className="after-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                    <rect
                      className={loss.seconds < 0 ? 'is-gain' : undefined}
                      width={(100 * Math.abs(loss.seconds)) / most}
                      height="4"
                    />
                  </svg>
                </th>
                <td className="figure">{seconds(Math.abs(loss.seconds))}</td>
                <td className="figure">{loss.matches}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.timeHow(report.watched)}</p>
    </>
  )
}
