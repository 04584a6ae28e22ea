import { useQueries } from '@tanstack/react-query'
import { useMemo } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { Call, PlanReport } from '../../../src/model/plan/types.ts'
import { pointsCell, secondsCell, signedCell } from '../../charts/cells.ts'
import { Figure } from '../../charts/Figure.tsx'
import { LeaveStrip } from '../../charts/LeaveStrip.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Cautions } from '../../shell/Cautions.tsx'
import { Fold } from '../../shell/parts/Fold.tsx'
import { Loading } from '../../shell/states.tsx'
import { nodeWords, placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { explainCall, explainLeaveBy } from '../../words/explainMoves.ts'
import { points, seconds, signedPoints } from '../../words/format.ts'
import { askModel } from '../../worker/client.ts'
import type { Questions } from '../../worker/protocol.ts'
import { nameOf } from '../../worker/useModel.ts'
import { reachable, teleopStart } from '../designs/cycle.ts'
import { SideBySide } from './SideBySide.tsx'

/** When to leave for the finish: the one call of a drive coach, and the last moment from each place. */
export function Calls(props: { game: Game; options: Option[]; source: string }) {
  const { game, source } = props
  const text = words().tradeoffs.call
  const asked = useMemo(
    () =>
      props.options
        .filter(
          ({ finish, role, robot }) =>
            finish.mode !== 'skip' && game.finishes.some(({ id }) => role.finishes.includes(id) && robot.finish[id]),
        )
        .map((option): Questions['report']['ask'] => ({ game, option, with: ['call'] })),
    [game, props.options],
  )
  const options = asked.map(({ option }) => option)
  const reports = useQueries({
    queries: asked.map((ask) => ({
      queryKey: ['model', 'report', ask],
      queryKeyHashFn: () => nameOf('report', ask),
      queryFn: ({ signal }: { signal: AbortSignal }) => askModel('report', ask, { signal }),
      staleTime: Number.POSITIVE_INFINITY,
      retry: false,
    })),
  })
  if (options.length === 0) return null
  const error = reports.find((report) => report.error)?.error
  return (
    <section className="sheet stack" aria-labelledby="call-title">
      <h2 id="call-title">{text.title}</h2>
      <p>{text.how}</p>
      <SideBySide
        caption={text.table}
        first={text.option}
        columns={[text.leave, text.points, text.early, text.late, text.free]}
        rows={options.map((option, index) => ({
          id: option.id,
          name: option.name,
          cells: callCells(option, reports[index]?.data ?? null, source),
        }))}
      />
      {error && <p role="alert">{error.message}</p>}
      {reports.some((report) => report.isPending) && <Loading what={text.loading} />}
      <ul className="facts">
        {options.map((option, index) => {
          const call = reports[index]?.data?.call
          return call ? <li key={option.id}>{rather(option, call)}</li> : null
        })}
      </ul>
      {reports.some(({ data }) => (data?.leaveBy.length ?? 0) > 0) && (
        <Fold id="leave-title" title={text.leaveByAll} level={3}>
          {options.map((option, index) => {
            const report = reports[index]?.data
            return report ? <LeaveBy key={option.id} {...{ game, option, report, source }} /> : null
          })}
          <p className="soft small">{text.strip}</p>
        </Fold>
      )}
      <Cautions which={['lifted']} />
    </section>
  )
}

function callCells(option: Option, report: PlanReport | null, source: string) {
  const text = words().tradeoffs.call
  const call = report?.call
  if (!report) return ['…', '…', '…', '…', '…']
  const free = option.finish.mode === 'best' ? report.expected.total : null
  if (!call) return [text.none, '–', '–', '–', '–']
  const opens = (shown: string) => (
    <CameAbout explain={() => explainCall(option, call, free, source)}>{shown}</CameAbout>
  )
  const [early, late] = [Math.max(0, call.early3), Math.max(0, call.late3)]
  return [
    secondsCell(call.at, opens(text.left(seconds(call.at)))),
    pointsCell(call.points, opens(points(call.points))),
    pointsCell(early, opens(points(early))),
    pointsCell(late, opens(points(late))),
    free === null ? '–' : signedCell(free - call.points, opens(signedPoints(free - call.points))),
  ]
}

/** Which way to err. */
function rather({ name }: Option, { early3, late3 }: Call): string {
  const text = words().tradeoffs.call.rather
  if (Math.max(early3, late3) < 0.1) return text.free(name)
  if (Math.abs(early3 - late3) < 0.1) return text.even(name)
  return early3 < late3 ? text.early(name) : text.late(name)
}

function LeaveBy(props: { game: Game; option: Option; report: PlanReport; source: string }) {
  const { game, option, report, source } = props
  const text = words().tradeoffs.call
  const nodes = reachable(game, report.policy, teleopStart(option))
  const found = report.leaveBy.filter(({ node }) =>
    nodes.some((known) => known.at === node.at && JSON.stringify(known.load) === JSON.stringify(node.load)),
  )
  if (found.length === 0) return null
  const rows = found
    .map((row) => ({
      id: `${row.node.at}/${row.node.load?.count ?? 0}`,
      name: nodeWords(game, row.node),
      finish: placeName(game, row.finish),
      from: row.from,
      latest: row.latest,
      to: row.to,
    }))
    .sort((a, b) => b.from - a.from)
  const title = text.leaveBy(option.name)
  return (
    <div className="stack">
      <Figure
        title={title}
        table={{
          head: [text.from, text.to, text.best, text.latest],
          rows: rows.map((row) => [
            row.name,
            row.finish,
            secondsCell(row.from, text.left(seconds(row.from))),
            secondsCell(row.latest, text.left(seconds(row.latest))),
          ]),
        }}
      >
        <Measured drawn="leave-by" data={report}>
          {(width) => (
            <LeaveStrip
              rows={rows}
              call={report.call?.at ?? null}
              endgame={game.clock.endgame}
              width={Math.min(width, 900)}
            />
          )}
        </Measured>
      </Figure>
      <p>
        <CameAbout explain={() => explainLeaveBy(game, option, found, source)}>{words().explain.opened}</CameAbout>
      </p>
    </div>
  )
}
