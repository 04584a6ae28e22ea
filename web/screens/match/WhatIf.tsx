import { Button } from '@mantine/core'
import { useMemo } from 'react'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { signedCell } from '../../charts/cells.ts'
import { DifferenceDots, dotsBehind } from '../../charts/DifferenceDots.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { percent, signedPoints } from '../../words/format.ts'
import type { Until } from '../../worker/usePlaying.ts'
import { SideBySide } from '../tradeoffs/SideBySide.tsx'
import { Progress } from './Answer.tsx'
import { explainDifference } from './explain.ts'
import type { Ways } from './MatchDesk.tsx'
import { sideName } from './names.ts'
import { type PairedDifference, pairedDifference } from './paired.ts'
import { Alliance } from './SetupForm.tsx'
import { chanceValue, errorOf, pointsValue } from './said.ts'
import { isComplete, type MatchSetup, sameSides } from './setup.ts'
import type { Played } from './usePlayed.ts'

/** A second line-up on the same luck, and what it changes match by match. */
export function WhatIf(props: {
  setup: MatchSetup
  ways: Ways
  onChange(next: Partial<MatchSetup>): void
  first: Played
  second: Played
  until: Until
  source(report: { replicates: number; seed: number }): string
}) {
  const { setup, ways, onChange, first, second, until, source } = props
  const text = words().match
  const { other } = setup
  const difference = useMemo(() => pairedDifference(first.leads, second.leads), [first.leads, second.leads])
  const copy = { ours: setup.ours, theirs: setup.theirs }
  return (
    <section className="sheet stack" aria-labelledby="match-whatIf">
      <h2 id="match-whatIf">{text.whatIf.title}</h2>
      <p className="soft small">{text.whatIf.help}</p>
      {!other ? (
        <div className="no-print">
          <Button onClick={() => onChange({ other: copy })}>{text.whatIf.begin}</Button>
        </div>
      ) : (
        <>
          <div className="columns">
            {(['ours', 'theirs'] as const).map((side) => (
              <Alliance
                key={side}
                side={side}
                legend={text.whatIf.legend(sideName(side))}
                slots={other[side]}
                than={setup[side]}
                ways={ways}
                onChange={(slots) => onChange({ other: { ...other, [side]: slots } })}
              />
            ))}
          </div>
          <div className="row no-print">
            <Button variant="default" disabled={sameSides(other, setup)} onClick={() => onChange({ other: copy })}>
              {text.whatIf.copy}
            </Button>
            <Button variant="default" onClick={() => onChange({ ...other, other: copy })}>
              {text.whatIf.takeOver}
            </Button>
            <Button variant="default" onClick={() => onChange({ other: null })}>
              {text.whatIf.remove}
            </Button>
          </div>
          {!isComplete(other) ? (
            <p role="status">{text.setup.incomplete}</p>
          ) : sameSides(other, setup) ? (
            <p role="status">{text.whatIf.same}</p>
          ) : (
            <>
              {first.fresh && second.fresh && difference && (
                <Both
                  first={first.answer!.report}
                  second={second.answer!.report}
                  difference={difference}
                  level={setup.level}
                  source={source(second.answer!.report)}
                />
              )}
              {second.state === 'failed' ? (
                <Trouble title={text.answer.failed} error={second.error} retry={second.goOn} />
              ) : (
                <Progress label={text.whatIf.title} played={second} until={until} />
              )}
            </>
          )}
        </>
      )}
    </section>
  )
}

function Both(props: {
  first: MatchReport
  second: MatchReport
  difference: PairedDifference
  level: string | null
  source: string
}) {
  const { first, second, difference, level, source } = props
  const text = words().match.whatIf
  const dots = quantileDots(difference.distribution)
  const { mean, ahead, level: same } = difference
  return (
    <>
      <p className="answer">
        {text.headline}{' '}
        <CameAbout explain={() => explainDifference(second, difference, { report: first, level, source })}>
          <span className="numeral">
            {signedPoints(mean.mean)} ± {errorOf(mean)}
          </span>
        </CameAbout>{' '}
        {text.perMatch}
      </p>
      <p>
        {text.better(percent(ahead.probability))} {text.level(percent(same.probability))}
      </p>
      <SideBySide
        caption={text.table}
        first={text.lineup}
        columns={[text.win, text.ours, text.theirs, text.lead, text.ranking]}
        rows={[
          { id: 'first', name: text.first, cells: cellsOf(first) },
          { id: 'second', name: text.second, cells: cellsOf(second) },
        ]}
      />
      <Figure
        title={text.figure}
        table={{ head: [text.pair, text.gained], rows: dots.map((dot, index) => [index + 1, signedCell(dot)]) }}
      >
        <Measured drawn="what-if" data={difference} most={760}>
          {(width) => (
            <DifferenceDots
              distribution={difference.distribution}
              mean={mean.mean}
              width={width}
              index={2}
              axis={text.axis}
              told={text.told(dotsBehind(dots), signedPoints(mean.mean))}
            />
          )}
        </Measured>
      </Figure>
    </>
  )
}

/** Win, both scores, lead and ranking points of a line-up. */
export const cellsOf = (report: MatchReport) => [
  chanceValue(report.win),
  pointsValue(report.score.ours),
  pointsValue(report.score.theirs),
  pointsValue(report.margin),
  pointsValue(report.rankingPoints.ours),
]
