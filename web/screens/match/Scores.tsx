import type { MatchReport } from '../../../src/model/match/types.ts'
import { pointsCell, signedCell } from '../../charts/cells.ts'
import { DifferenceDots, dotsBehind } from '../../charts/DifferenceDots.tsx'
import { DotPlot } from '../../charts/DotPlot.tsx'
import { Figure } from '../../charts/Figure.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { quantileDots } from '../../charts/quantileDots.ts'
import { type Side, sideColour } from '../../charts/RobotSign.tsx'
import { words } from '../../words/catalogue.ts'
import { signedPoints } from '../../words/format.ts'
import { SideBySide } from '../tradeoffs/SideBySide.tsx'
import { sideName } from './names.ts'
import { pointsValue } from './said.ts'

const sides: readonly Side[] = ['ours', 'theirs']

/** Both scores and the lead as dots that can be counted, and where the points come from. */
export function Scores(props: { report: MatchReport }) {
  const { report } = props
  const { scores: text, letters } = words().match
  const { distributions, margin } = report
  const rows = sides.map((side) => ({
    id: side,
    name: sideName(side),
    distribution: distributions[side],
    mean: report.score[side].mean,
    mark: { letter: letters[side], colour: sideColour(side) },
  }))
  const lead = quantileDots(distributions.margin)
  return (
    <section className="sheet stack" aria-labelledby="match-scores">
      <h2 id="match-scores">{text.title}</h2>
      <SideBySide
        caption={text.table}
        first={text.what}
        columns={sides.map(sideName)}
        rows={[
          { id: 'score', name: text.total, cells: sides.map((side) => pointsValue(report.score[side])) },
          { id: 'auto', name: text.auto, cells: sides.map((side) => pointsValue(report.autoPoints[side])) },
          { id: 'finish', name: text.finish, cells: sides.map((side) => pointsValue(report.finishPoints[side])) },
        ]}
      />
      <div className="columns pictures">
        <Figure
          title={text.each}
          table={{
            head: [text.match, ...rows.map(({ name }) => name)],
            rows: Array.from({ length: 20 }, (_, index) => [
              index + 1,
              ...rows.map(({ distribution }) => pointsCell(quantileDots(distribution)[index]!)),
            ]),
          }}
        >
          <Measured drawn="scores" data={distributions}>
            {(width) => <DotPlot rows={rows} width={width} threshold={null} />}
          </Measured>
        </Figure>
        <Figure
          title={text.margin}
          table={{ head: [text.match, text.lead], rows: lead.map((dot, index) => [index + 1, signedCell(dot)]) }}
        >
          <Measured drawn="margin" data={distributions}>
            {(width) => (
              <DifferenceDots
                distribution={distributions.margin}
                mean={margin.mean}
                width={width}
                index={0}
                axis={text.axis}
                told={text.marginTold(dotsBehind(lead), signedPoints(margin.mean))}
              />
            )}
          </Measured>
        </Figure>
      </div>
    </section>
  )
}
