import { memo, type ReactNode } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { Call, PlanReport } from '../../../src/model/plan/types.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { words } from '../../words/catalogue.ts'
import { explainPlan } from '../../words/explain.ts'
import { explainCall, explainGain } from '../../words/explainMoves.ts'
import { explainSpread } from '../../words/explainSpread.ts'
import { points, seconds, signedPoints } from '../../words/format.ts'
import { isNothing } from '../../words/verdict.ts'
import type { Live } from './useLive.ts'
import { useSavedTotal } from './useSavedTotal.ts'

/** The expected points, at once; how sure they are and what they consist of, as soon as it is computed. */
export const PointsPanel = memo(function PointsPanel(props: {
  game: Game
  option: Option
  /** The same way to play with the robot as it is saved, to say what the edit brought. */
  saved: Option
  /** Whether the robot that is shown may be another than the saved one. */
  edited: boolean
  live: Live
  report: PlanReport | undefined
  reportFresh: boolean
  call: Call | null
  callFresh: boolean
  stale: boolean
  source: string
  /** What the points do not contain. */
  note?: ReactNode
}) {
  const texts = words().designs.points
  const { game, option, saved, live, report, reportFresh, call, callFresh } = props
  const before = useSavedTotal(game, saved, live, props.edited)
  const { total } = live
  const gained = total !== null && before !== null ? total - before : 0
  const calling = (found: Call) =>
    explainCall(option, found, option.finish.mode === 'best' && report ? report.expected.total : null, props.source)
  return (
    <section className="points" aria-label={texts.label} style={props.stale ? { opacity: 0.55 } : undefined}>
      <p className="points-total">
        <span data-testid="points" data-settled={live.settled} className="numeral">
          {total === null ? '…' : points(total)}
        </span>{' '}
        <span className="points-unit">{texts.unit}</span>
      </p>
      <div className="points-change" aria-live="polite">
        {!isNothing(gained) && (
          <span className={gained > 0 ? 'gain' : 'loss'}>
            <CameAbout explain={() => explainGain({ now: total ?? 0, saved: before ?? 0, source: props.source })}>
              {texts.change(signedPoints(gained))}
            </CameAbout>
          </span>
        )}
      </div>
      {report && (
        <div style={reportFresh ? undefined : { opacity: 0.55 }}>
          <CameAbout explain={() => explainSpread(option, { ...report, mean: report.expected.total }, props.source)}>
            {texts.eight(points(report.p10), points(report.p90))}
          </CameAbout>{' '}
          <CameAbout
            explain={() => ({
              ...explainPlan(game, option, report, props.source),
              otherwise: words().explainDesigns.otherwise.points,
              links: [['/trade-offs', words().explainDesigns.toTradeOffs]],
            })}
          >
            {texts.cameAbout}
          </CameAbout>
        </div>
      )}
      {call && Object.keys(option.robot.finish).length > 0 && (
        <div style={callFresh ? undefined : { opacity: 0.55 }}>
          {texts.call[0]}{' '}
          <CameAbout explain={() => calling(call)}>
            <strong>{seconds(call.at)}</strong>
          </CameAbout>{' '}
          {texts.call[1]}{' '}
          <CameAbout explain={() => calling(call)}>
            {texts.costs(points(Math.max(0, call.early3)), points(Math.max(0, call.late3)))}
          </CameAbout>
        </div>
      )}
      {props.note}
    </section>
  )
})
