import type { Compared, Coverage, Judgement } from '../../../../src/model/scouting/record/index.ts'
import { CalibrationCurve } from '../../../charts/CalibrationCurve.tsx'
import { percentCell } from '../../../charts/cells.ts'
import { Figure } from '../../../charts/Figure.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { PitBars } from '../../../charts/PitBars.tsx'
import { words } from '../../../words/catalogue.ts'
import { decimal } from '../../../words/decimal.ts'
import { percent, points, signedPoints } from '../../../words/format.ts'
import { SideBySide } from '../../tradeoffs/SideBySide.tsx'

/** Whether chances and intervals hold, and whether forecasts are better than none: in pictures and words. */
export function Judged({ judgement }: { judgement: Judgement }) {
  const texts = words().forecasts
  const { curve, pit, brier } = judgement
  const width = 1 / pit.counts.length
  return (
    <>
      <div className="forecast-pictures">
        <div className="stack">
          <Figure
            title={texts.calibration}
            table={{
              head: [texts.chance, texts.came, texts.bandLow, texts.bandHigh, texts.matches],
              rows: curve.map(({ forecast, came, low, high, matches }) => [
                percentCell(forecast),
                percentCell(came),
                percentCell(low),
                percentCell(high),
                matches,
              ]),
            }}
          >
            <Measured drawn="calibration" data={judgement}>
              {(size) => <CalibrationCurve points={curve} width={size} />}
            </Measured>
          </Figure>
          <p className="soft">{texts.calibrationHow}</p>
        </div>
        <div className="stack">
          <Figure
            title={texts.pit}
            table={{
              head: [texts.pitClass, texts.scores],
              rows: pit.counts.map((count, k) => [texts.between(percent(k * width), percent((k + 1) * width)), count]),
            }}
          >
            <Measured drawn="pit" data={judgement}>
              {(size) => <PitBars pit={pit} width={size} />}
            </Measured>
          </Figure>
          <p className="soft">{texts.pitHow(pit.low, pit.high)}</p>
        </div>
      </div>
      <h3>{texts.coverage}</h3>
      <SideBySide
        caption={texts.coverage}
        first={texts.interval}
        columns={[texts.inside, texts.wanted, texts.verdict]}
        rows={judgement.coverage.map((each) => ({
          id: String(each.level),
          name: percent(each.level),
          cells: [
            texts.of(String(each.inside), each.scores),
            texts.of(points(each.expected), each.scores),
            texts.coverageVerdicts[coverageVerdict(each)],
          ],
        }))}
      />
      <h3>{texts.compared}</h3>
      <p className="soft">{texts.comparedHow}</p>
      <SideBySide
        caption={texts.compared}
        first={texts.comparing}
        columns={[texts.ours, texts.theirs, texts.difference, texts.verdict]}
        least={128}
        rows={judgement.compared.map((each) => ({
          id: `${each.baseline} ${each.measure}`,
          name: texts.against(texts.measures[each.measure], texts.baselines[each.baseline]),
          cells: comparedCells(each),
        }))}
      />
      <p className="soft">
        {texts.parts(
          decimal(brier.score, 3),
          decimal(brier.miscalibration, 3),
          decimal(brier.discrimination, 3),
          decimal(brier.uncertainty, 3),
        )}
      </p>
    </>
  )
}

function coverageVerdict({ off }: Coverage): 'fits' | 'bold' | 'cautious' | 'few' {
  if (!off) return 'few'
  return off[1] < 0 ? 'bold' : off[0] > 0 ? 'cautious' : 'fits'
}

function comparedCells({ measure, ours, theirs, difference }: Compared): string[] {
  const texts = words().forecasts
  const [write, signed] =
    measure === 'crps' ? [points, signedPoints] : [fine, (value: number) => `${value > 0 ? '+' : ''}${fine(value)}`]
  const off = ours - theirs
  const verdict = !difference ? 'few' : difference[1] < 0 ? 'better' : difference[0] > 0 ? 'worse' : 'open'
  return [
    write(ours),
    write(theirs),
    difference ? texts.differenceOf(signed(off), signed(difference[0]), signed(difference[1])) : signed(off),
    texts.comparedVerdicts[verdict],
  ]
}

const fine = (value: number): string => decimal(value, 3).replace('-', '\u2212')
