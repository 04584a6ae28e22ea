import { Button } from '@mantine/core'
import { useState } from 'react'
import { voided } from '../../../../src/model/event/order.ts'
import { resultColumnsOf } from '../../../../src/model/event/table/results.ts'
import { alliances } from '../../../../src/model/scouting/types.ts'
import { Empty } from '../../../shell/states.tsx'
import { TableDownload } from '../../../shell/TableDownload.tsx'
import type { TableData } from '../../../tables/table.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, plain } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { allianceName, matchName } from '../names.ts'
import { Said } from '../Said.tsx'
import { BringResults } from './BringResults.tsx'
import { ResultForm } from './ResultForm.tsx'

/** What officials counted, match by match. */
export function ResultsPart(page: EventPage) {
  const { game, schedule, results, lead, entered } = page
  const texts = words().event.results
  const [open, setOpen] = useState<string | null>(null)
  const matches = schedule.matches.map(({ match }) => match)
  const gone = voided(matches)
  const by = new Map(results.map((stored) => [stored.match, stored.result]))
  const opened = schedule.matches.find(({ match }) => match.id === open)
  const bonusName = (id: string) => game.bonuses.find((bonus) => bonus.id === id)?.name ?? id
  return (
    <>
      <section className="sheet stack" aria-labelledby="results">
        <h2 id="results">{words().event.parts.results}</h2>
        {entered.trouble && (
          <Said key={entered.trouble} trouble>
            {entered.trouble}
          </Said>
        )}
        {entered.entered && (
          <Said key={entered.times}>
            {texts.done(entered.entered.length)}{' '}
            <button type="button" className="opens" disabled={entered.busy} onClick={() => void entered.takeBack()}>
              {words().event.schedule.undo}
            </button>
          </Said>
        )}
        {matches.length === 0 ? (
          <Empty title={texts.empty}>
            <p>{texts.emptyHow}</p>
          </Empty>
        ) : (
          <>
            <div
              className="scroll"
              tabIndex={0}
              role="region"
              aria-label={words().event.tableOf(words().event.parts.results)}
            >
              <table className="tide results-table">
                <thead>
                  <tr>
                    <th scope="col">{words().event.schedule.match}</th>
                    {alliances.map((alliance) => (
                      <th key={alliance} scope="col" className={`figure of-${alliance}`}>
                        {allianceName(alliance)}
                      </th>
                    ))}
                    <th scope="col" className="bonuses">
                      {texts.bonuses}
                    </th>
                    {lead && <th scope="col">{texts.action}</th>}
                  </tr>
                </thead>
                <tbody>
                  {matches.map((match) => {
                    const result = by.get(match.id)
                    const reached = alliances.flatMap((alliance) =>
                      result?.[alliance].bonuses?.length
                        ? [`${allianceName(alliance)}: ${listed(result[alliance].bonuses.map(bonusName))}`]
                        : [],
                    )
                    return (
                      <tr key={match.id} className={gone.has(match.id) ? 'gone' : undefined}>
                        <th scope="row">{matchName(match)}</th>
                        {alliances.map((alliance) => (
                          <td key={alliance} className={`figure of-${alliance}`}>
                            {result ? plain(result[alliance].points.total) : '–'}
                          </td>
                        ))}
                        <td className="bonuses">{reached.join(' · ')}</td>
                        {lead && (
                          <td>
                            <button
                              type="button"
                              className="opens"
                              aria-label={(result ? texts.correctOf : texts.enterOf)(matchName(match))}
                              onClick={() => setOpen(match.id)}
                            >
                              {result ? texts.correct : texts.enter}
                            </button>
                          </td>
                        )}
                      </tr>
                    )
                  })}
                </tbody>
              </table>
            </div>
            <TableDownload title={words().event.parts.results} table={() => resultsTable(page)} />
            <div className="row no-print">
              <Button variant="default" onClick={() => window.print()}>
                {words().event.schedule.print}
              </Button>
            </div>
          </>
        )}
      </section>
      {opened && (
        <ResultForm
          key={opened.match.id}
          page={page}
          stored={opened}
          before={results.find(({ match }) => match === opened.match.id)}
          onClose={() => setOpen(null)}
        />
      )}
      {lead && matches.length > 0 && <BringResults {...page} />}
    </>
  )
}

/** The results with the columns that are read back. */
function resultsTable({ game, schedule, results }: EventPage): TableData {
  const by = new Map(results.map((stored) => [stored.match, stored.result]))
  const names = resultColumnsOf(game)
  const rows = schedule.matches.flatMap(({ match }) => {
    const result = by.get(match.id)
    if (!result) return []
    const cells = new Map<string, string | number>([
      ['phase', match.phase],
      ['number', match.number],
      ['play', match.play],
    ])
    for (const alliance of alliances) {
      const { points, bonuses, pieces = {} } = result[alliance]
      const set = (column: string, value: string | number | undefined) =>
        value === undefined ? cells : cells.set(`${alliance}_${column}`, value)
      set('total', points.total)
      set('autonomous', points.autonomous)
      set('goals', points.goals)
      set('finishes', points.finishes)
      set('from_fouls', points.fromFouls)
      set('bonuses', bonuses && bonuses.length > 0 ? bonuses.join('; ') : bonuses ? '-' : undefined)
      for (const [goal, n] of Object.entries(pieces)) set(`pieces_${goal}`, n)
    }
    return [names.map((name) => cells.get(name) ?? null)]
  })
  return {
    name: 'results',
    title: words().event.parts.results,
    columns: names.map((name) => ({
      name,
      title: name,
      type: /phase|bonuses/.test(name) ? 'string' : /number|play|pieces/.test(name) ? 'integer' : 'number',
    })),
    rows,
  }
}
