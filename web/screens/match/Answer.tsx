import { Button } from '@mantine/core'
import type { Game } from '../../../src/model/documents/types.ts'
import { Measured } from '../../charts/Measured.tsx'
import { ValueBars } from '../../charts/ValueBars.tsx'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { percent, plain, points } from '../../words/format.ts'
import type { Until } from '../../worker/usePlaying.ts'
import { explainMargin, explainRanking, explainWin } from './explain.ts'
import { chanceError, chanceSaid, errorOf, precisionSaid } from './said.ts'
import type { Played } from './usePlayed.ts'

/** The headline, how sure it is, and how far the playing is. */
export function Answer(props: {
  game: Game
  played: Played
  until: Until
  source(report: { replicates: number; seed: number }): string
}) {
  const { game, played, until, source } = props
  const text = words().match.answer
  const report = played.answer?.report
  const of = report && { report, level: played.asked?.level ?? null, source: source(report) }
  return (
    <section className="sheet stack" aria-labelledby="match-answer">
      <h2 id="match-answer" className="label">
        {text.title}
      </h2>
      {report && of && (
        <div className={played.fresh ? 'stack' : 'stack outdated'}>
          <p className="answer">
            <CameAbout explain={() => explainWin(of)}>
              {text.win(percent(report.win.probability), chanceError(report.win))}
            </CameAbout>
          </p>
          <p>
            {text.ranking}{' '}
            <CameAbout explain={() => explainRanking(game, of)}>
              <strong>
                {points(report.rankingPoints.ours.mean)} {text.error(errorOf(report.rankingPoints.ours))}
              </strong>
            </CameAbout>
            , {text.against(points(report.rankingPoints.theirs.mean))}.{' '}
            {report.margin.mean < 0 ? text.behind : text.margin}{' '}
            <CameAbout explain={() => explainMargin(of)}>
              <strong>
                {points(Math.abs(report.margin.mean))} {text.error(errorOf(report.margin))}
              </strong>
            </CameAbout>{' '}
            {text.onAverage}.
          </p>
          <div className="outcomes">
            <Measured drawn="outcomes" data={report} most={560}>
              {(width) => (
                <ValueBars
                  width={width}
                  label={text.chances}
                  most={1}
                  bars={(['win', 'tie', 'loss'] as const).map((outcome) => ({
                    id: outcome,
                    name: text[`${outcome}Name`],
                    value: report[outcome].probability,
                    error: report[outcome].standardError,
                    text: chanceSaid(report[outcome]),
                  }))}
                />
              )}
            </Measured>
          </div>
        </div>
      )}
      {played.state === 'failed' ? (
        <Trouble title={text.failed} error={played.error} retry={played.goOn} />
      ) : (
        <Progress label={text.title} played={played} until={until} />
      )}
      <p className="soft small">{text.errors}</p>
      <p className="soft small">{text.leavesOut}</p>
    </section>
  )
}

/** How far the playing of a line-up is, and a way to stop it and to go on. */
export function Progress(props: { label: string; played: Played; until: Until }) {
  const { label, played, until } = props
  const wanted = until.replicates
  const { state, done, fresh, answer } = played
  const text = words().match.answer
  const running = state === 'running'
  return (
    <div className="stack no-print" style={{ gap: '0.4rem' }}>
      {running && <progress max={wanted} value={done > 0 ? done : undefined} aria-label={label} />}
      <div className="row">
        <p className="soft small" role="status">
          {running
            ? done === 0
              ? text.preparing
              : text.running(plain(done), plain(wanted))
            : state === 'stopped'
              ? fresh
                ? text.stopped(plain(answer?.report.replicates ?? 0))
                : text.stoppedEarly
              : state === 'done' && answer
                ? [
                    text.done(plain(answer.report.replicates), plain(answer.report.seed)),
                    ...precisionSaid(answer.report, until.precision),
                  ].join(' ')
                : text.preparing}
          {!fresh && answer && ` ${text.old}`}
        </p>
        {running && (
          <Button size="compact-md" variant="default" onClick={played.stop}>
            {text.stop}
          </Button>
        )}
        {state === 'stopped' && (
          <Button size="compact-md" variant="default" onClick={played.goOn}>
            {text.goOn}
          </Button>
        )}
      </div>
    </div>
  )
}
