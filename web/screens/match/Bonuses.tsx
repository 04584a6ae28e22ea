import type { Game } from '../../../src/model/documents/types.ts'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { words } from '../../words/catalogue.ts'
import { SideBySide } from '../tradeoffs/SideBySide.tsx'
import { sideName } from './names.ts'
import { chanceValue, pointsValue } from './said.ts'

const sides = ['ours', 'theirs'] as const

/** Ranking points of both, and how often each bonus is earned. */
export function Bonuses(props: { game: Game; report: MatchReport }) {
  const { game, report } = props
  const text = words().match.bonuses
  return (
    <section className="sheet stack" aria-labelledby="match-bonuses">
      <h2 id="match-bonuses">{text.title}</h2>
      <SideBySide
        caption={text.table}
        first={text.what}
        columns={sides.map(sideName)}
        rows={[
          {
            id: 'ranking',
            name: text.rankingPoints,
            cells: sides.map((side) => pointsValue(report.rankingPoints[side])),
          },
          ...game.bonuses.map(({ id, name }) => ({
            id,
            name: text.chance(name),
            cells: sides.map((side) => chanceValue(report.bonuses[id]![side])),
          })),
        ]}
      />
      {game.bonuses.length === 0 && <p className="soft small">{text.none}</p>}
    </section>
  )
}
