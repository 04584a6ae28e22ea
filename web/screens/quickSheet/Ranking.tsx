import type { QuickSheetRecord, StrengthName } from '../../../src/model/documents/quickSheet.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { order, strengthNames } from '../../../src/model/sheet/index.ts'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { words } from '../../words/catalogue.ts'
import type { WayAnswer } from '../../worker/protocol.ts'
import { leadWords, rankedOf, strengthWords } from './ranking.ts'
import { rankingTable } from './rankingTable.ts'
import { WayPoints } from './WayPoints.tsx'

/** All ways in order, at three strengths of play, and whether the order hangs on the strength. */
export function Ranking(props: {
  game: Game
  sheet: QuickSheetRecord
  /** By strength and way; null before the first answer. */
  answers: { [name in StrengthName]: WayAnswer[] } | null
  stale: boolean
}) {
  const { sheet, answers } = props
  const texts = words().quickSheet
  const ranked = answers && {
    weak: rankedOf(sheet, answers.weak),
    middling: rankedOf(sheet, answers.middling),
    strong: rankedOf(sheet, answers.strong),
  }
  const orders = ranked && {
    weak: order(ranked.weak),
    middling: order(ranked.middling),
    strong: order(ranked.strong),
  }
  const found = ranked && strengthWords(sheet, ranked)
  return (
    <section className="sheet stack" aria-labelledby="ranking-title">
      <h2 id="ranking-title">{texts.ranking.title}</h2>
      {!ranked || !orders || ranked.middling.length === 0 ? (
        <p className="soft" role="status">
          {sheet.ways.length > 0 && props.stale ? texts.ranking.computing : texts.ranking.empty}
        </p>
      ) : (
        <>
          <div aria-live="polite" className="stack">
            <p>
              <strong>{leadWords(sheet, ranked.middling) ?? texts.ranking.alone}</strong>
            </p>
            {found && <p>{found.headline}</p>}
            {found && found.flips.length > 0 && (
              <ul className="flips">
                {found.flips.map((flip) => (
                  <li key={flip}>{flip}</li>
                ))}
              </ul>
            )}
          </div>
          <div className="scroll" style={{ opacity: props.stale ? 0.6 : 1 }}>
            <table className="tide ranking" data-testid="ranking">
              <caption>{texts.ranking.caption}</caption>
              <thead>
                <tr>
                  <th scope="col">{texts.ranking.way}</th>
                  {strengthNames.map((name) => (
                    <th key={name} scope="col" className="figure">
                      {texts.strength.names[name]}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {orders.middling.map((id) => (
                  <tr key={id}>
                    <th scope="row">{sheet.ways.find((way) => way.id === id)?.name}</th>
                    {strengthNames.map((name) => {
                      return (
                        <td key={name} className="figure">
                          <WayPoints
                            {...{ game: props.game, sheet, id }}
                            answers={answers![name]}
                            under={texts.strength.names[name]}
                          />
                          <br />
                          <span className="soft small">{texts.ranking.rank(orders[name].indexOf(id) + 1)}</span>
                        </td>
                      )
                    })}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          <TableDownload
            title={texts.ranking.caption}
            table={() => rankingTable(sheet, orders, ranked, texts.ranking.caption)}
          />
          <p className="soft small">{texts.ranking.means}</p>
        </>
      )}
    </section>
  )
}
