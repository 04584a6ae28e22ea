import type { Game, Option } from '../../../../src/model/documents/types.ts'
import type { StatedReport } from '../../../../src/model/match/stated/types.ts'
import type { ValueCell } from '../../../charts/cell.ts'
import { seriesLetter } from '../../../charts/DotPlot.tsx'
import { words } from '../../../words/catalogue.ts'
import { percent, points } from '../../../words/format.ts'
import { optionName } from '../../../words/verdict.ts'
import { SideBySide } from '../SideBySide.tsx'
import { valueSaid } from './standing.ts'

/** What whole matches of each option come to: wins, ranking points, the alliance's points, and each bonus. */
export function FieldTable(props: { game: Game; options: readonly Option[]; report: StatedReport }) {
  const { game, options, report } = props
  const text = words().objective
  return (
    <SideBySide
      caption={text.table}
      first={text.option}
      columns={[text.win, text.rankingPoints, text.score, ...game.bonuses.map(({ name }) => name)]}
      rows={report.options.map(({ id, win, rankingPoints, score, bonuses }, index) => ({
        id,
        name: `${seriesLetter(index)} ${optionName(options, id)}`,
        cells: [
          { shown: valueSaid('win', win), value: 100 * win.mean, unit: '%' },
          { shown: valueSaid('rankingPoints', rankingPoints), value: rankingPoints.mean },
          { shown: points(score.mean), value: score.mean },
          ...game.bonuses.map(({ id: bonus }): ValueCell => {
            const chance = bonuses[bonus]?.probability ?? 0
            return { shown: percent(chance), value: 100 * chance, unit: '%' }
          }),
        ],
      }))}
    />
  )
}
