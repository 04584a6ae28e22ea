import { Link } from 'wouter'
import type { QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { changes, order } from '../../../src/model/sheet/index.ts'
import { TableDownload } from '../../shell/TableDownload.tsx'
import { words } from '../../words/catalogue.ts'
import type { WayAnswer } from '../../worker/protocol.ts'
import { rankedOf } from './ranking.ts'
import { readingsTable } from './rankingTable.ts'
import type { ReadGame } from './useReadings.ts'
import { WayPoints } from './WayPoints.tsx'

/** The same ways under each reading of the rules. */
export function Readings(props: {
  game: Game
  sheet: QuickSheetRecord
  readings: ReadGame[]
  base: WayAnswer[]
  answers: WayAnswer[][] | null
}) {
  const { sheet, readings, answers } = props
  const texts = words().quickSheet.readings
  const base = rankedOf(sheet, props.base)
  const ranked = readings.map((_, index) => rankedOf(sheet, answers?.[index] ?? []))
  return (
    <section className={readings.length > 0 ? 'sheet stack' : 'sheet stack no-print'} aria-labelledby="readings-title">
      <h2 id="readings-title">{texts.title}</h2>
      <p>{texts.how}</p>
      {readings.length === 0 ? (
        <p className="soft">{texts.none}</p>
      ) : (
        base.length > 0 &&
        answers && (
          <>
            <Turns {...{ sheet, readings, base, ranked }} />
            <div className="scroll">
              <table className="tide ranking">
                <caption>{texts.caption}</caption>
                <thead>
                  <tr>
                    <th scope="col">{words().quickSheet.ranking.way}</th>
                    <th scope="col" className="figure wraps">
                      {texts.printed(sheet.game.revision)}
                    </th>
                    {readings.map((reading) => (
                      <th key={reading.id} scope="col" className="figure wraps">
                        {reading.name}
                        {reading.rule && <div className="small">{reading.rule}</div>}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {order(base).map((id) => (
                    <tr key={id}>
                      <th scope="row">{sheet.ways.find((way) => way.id === id)?.name}</th>
                      {[base, ...ranked].map((column, index) => {
                        const own = column.find((way) => way.id === id)
                        return (
                          <td key={readings[index - 1]?.id ?? 'base'} className="figure">
                            <WayPoints
                              {...{ game: props.game, sheet, id }}
                              answers={index === 0 ? props.base : answers[index - 1]!}
                              under={readings[index - 1]?.name ?? texts.printed(sheet.game.revision)}
                            />
                            <br />
                            <span className="soft small">
                              {own && words().quickSheet.ranking.rank(order(column).indexOf(id) + 1)}
                            </span>
                          </td>
                        )
                      })}
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
            <TableDownload
              title={texts.caption}
              table={() =>
                readingsTable({
                  title: texts.caption,
                  way: words().quickSheet.ranking.way,
                  heads: [texts.printed(sheet.game.revision), ...readings.map(({ name }) => name)],
                  ways: order(base).map((id) => sheet.ways.find((way) => way.id === id)!),
                  columns: [base, ...ranked],
                })
              }
            />
          </>
        )
      )}
      <p className="no-print">
        <Link href={`/games/${sheet.game.id}/consequences`}>{texts.name}</Link>
      </p>
    </section>
  )
}

type Column = ReturnType<typeof rankedOf>

function Turns(props: { sheet: QuickSheetRecord; readings: ReadGame[]; base: Column; ranked: Column[] }) {
  const { sheet, readings, base, ranked } = props
  const texts = words().quickSheet.readings
  const name = (id: string | undefined) => sheet.ways.find((way) => way.id === id)?.name ?? ''
  const best = order(base)[0]
  const sentences = readings.flatMap((reading, index) => {
    const column = ranked[index]!
    const pairs = changes(base, column).length
    if (pairs === 0) return []
    const now = order(column)[0]
    return [now === best ? texts.further(reading.name, pairs) : texts.turns(reading.name, name(now))]
  })
  if (sentences.length === 0)
    return (
      <p>
        <strong>{texts.same}</strong>
      </p>
    )
  return (
    <ul className="flips">
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  )
}
