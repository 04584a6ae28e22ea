import { useQueries } from '@tanstack/react-query'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { PlanReport } from '../../../src/model/plan/types.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Cautions } from '../../shell/Cautions.tsx'
import { Loading } from '../../shell/states.tsx'
import { nodeWords, placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { explainCall, explainLeaveBy } from '../../words/explainMoves.ts'
import { points, seconds } from '../../words/format.ts'
import { askModel } from '../../worker/client.ts'
import { reachable, teleopStart } from '../designs/cycle.ts'

/** When to leave for the finish: the one call of a drive coach, and the last moment from each place. */
export function Calls(props: { game: Game; options: Option[]; source: string }) {
  const { game, source } = props
  const options = props.options.filter(({ finish }) => finish.mode !== 'skip')
  const reports = useQueries({
    queries: options.map((option) => ({
      queryKey: ['model', 'report', { game, option, with: ['call'] }],
      queryFn: ({ signal }: { signal: AbortSignal }) =>
        askModel('report', { game, option, with: ['call'] }, { signal }),
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
    })),
  })
  if (options.length === 0) return null
  const error = reports.find((report) => report.error)?.error
  return (
    <section className="sheet stack" aria-labelledby="call-title">
      <h2 id="call-title">The call</h2>
      <p>
        A drive coach can call one number. This is the best one, and what calling three seconds early or late loses.
      </p>
      <div className="scroll">
        <table className="tide">
          <caption className="visually-hidden">The one call by option</caption>
          <thead>
            <tr>
              <th scope="col">Option</th>
              <th scope="col" className="figure">
                Leave with
              </th>
              <th scope="col" className="figure">
                Points
              </th>
              <th scope="col" className="figure">
                3 s early loses
              </th>
              <th scope="col" className="figure">
                3 s late loses
              </th>
            </tr>
          </thead>
          <tbody>
            {options.map((option, index) => {
              const report = reports[index]?.data
              const call = report?.call
              const free = option.finish.mode === 'best' ? (report?.expected.total ?? null) : null
              return (
                <tr key={option.id}>
                  <th scope="row">{option.name}</th>
                  <td className="figure">
                    {call ? (
                      <CameAbout explain={() => explainCall(option, call, free, source)}>
                        {seconds(call.at)} left
                      </CameAbout>
                    ) : (
                      '–'
                    )}
                  </td>
                  <td className="figure">{call ? points(call.points) : '–'}</td>
                  <td className="figure">{call ? points(Math.max(0, call.early3)) : '–'}</td>
                  <td className="figure">{call ? points(Math.max(0, call.late3)) : '–'}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      {error && <p role="alert">{error.message}</p>}
      {reports.some((report) => report.isPending) && <Loading what="the calls" />}
      {options.map((option, index) => {
        const report = reports[index]?.data
        return report ? <LeaveBy key={option.id} {...{ game, option, report, source }} /> : null
      })}
      <Cautions which={['lifted']} />
    </section>
  )
}

function LeaveBy(props: { game: Game; option: Option; report: PlanReport; source: string }) {
  const { game, option, report, source } = props
  const nodes = reachable(game, report.policy, teleopStart(option))
  const rows = report.leaveBy.filter(({ node }) =>
    nodes.some((known) => known.at === node.at && JSON.stringify(known.load) === JSON.stringify(node.load)),
  )
  if (rows.length === 0) return null
  return (
    <details>
      <summary>Leave by, from each place: {option.name}</summary>
      <div className="scroll">
        <table className="tide">
          <caption className="visually-hidden">Leave by, {option.name}</caption>
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col" className="figure">
                Best from
              </th>
              <th scope="col" className="figure">
                At the latest
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.node.at}/${row.node.load?.count ?? 0}`}>
                <th scope="row">{nodeWords(game, row.node)}</th>
                <td>{placeName(game, row.finish)}</td>
                <td className="figure">{seconds(row.from)} left</td>
                <td className="figure">{seconds(row.latest)} left</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        <CameAbout explain={() => explainLeaveBy(game, option, rows, source)}>{words().explain.opened}</CameAbout>
      </p>
    </details>
  )
}
