import { Button, Checkbox } from '@mantine/core'
import { useState } from 'react'
import { neededForResults } from '../../../../src/model/event/table/columns.ts'
import { placeResults, readResults, resultColumnsOf } from '../../../../src/model/event/table/results.ts'
import type { Result } from '../../../../src/model/scouting/types.ts'
import { previewResults, type ResultsPreview } from '../../../data/events.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, plain } from '../../../words/format.ts'
import { Findings, LineFaults } from '../bring/Faults.tsx'
import { TableInput } from '../bring/TableInput.tsx'
import { useTable } from '../bring/useTable.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'

/** Results from a pasted table or a file: read, looked at, then entered. */
export function BringResults(page: EventPage) {
  const { event, game, schedule, entered } = page
  const texts = words().event.results
  const known = resultColumnsOf(game)
  const of = useTable(known, `results/${event.id}`)
  const [looked, setLooked] = useState<ResultsPreview | null>(null)
  const [sure, setSure] = useState(false)
  const [busy, setBusy] = useState(false)
  const matches = schedule.matches.map(({ match }) => match)
  const lines = of.table ? readResults(of.table.rows, of.columns, { game, phase: 'qualification' }) : []
  const told = lines.flatMap((line) => ('read' in line ? [line.read] : []))
  const { results, nowhere } = placeResults(told, matches)
  const missing = neededForResults.some((column) => of.columns[column] === undefined)
  const forget = () => {
    setLooked(null)
    setSure(false)
  }
  const during = async (work: () => Promise<void>) => {
    of.setTrouble(null)
    setBusy(true)
    try {
      await work()
    } catch (error) {
      of.setTrouble((error as Error).message)
    } finally {
      setBusy(false)
    }
  }
  const look = () => during(async () => setLooked(await previewResults(event.id, results)))
  const apply = () =>
    during(async () => {
      await entered.send(looked!.entries)
      of.take('')
      forget()
    })
  const nameOf = (id: string) => {
    const match = matches.find((each) => each.id === id)
    return match ? matchName(match) : id
  }
  const totals = ({ red, blue }: Result) => `${plain(red.points.total)} : ${plain(blue.points.total)}`
  const correction = (id: string) => {
    const [before, after] = [page.results, looked!.entries].map((all) => all.find(({ match }) => match === id)?.result)
    if (!before || !after) return nameOf(id)
    const same = totals(before) === totals(after)
    return texts.correction(nameOf(id), totals(before), same ? texts.sameTotals : totals(after))
  }
  const wrong = looked?.findings.some(({ weight }) => weight === 'wrong') ?? false
  return (
    <section className="sheet stack no-print" aria-labelledby="bring-results">
      <h2 id="bring-results">{texts.bring}</h2>
      <p>{texts.bringHelp}</p>
      <TableInput
        label={texts.table}
        help={texts.tableHelp(known.join(', '))}
        of={{
          ...of,
          take: (text) => {
            forget()
            of.take(text)
          },
          choose: (column, place) => {
            forget()
            of.choose(column, place)
          },
        }}
        known={known}
        needed={neededForResults}
        busy={busy}
      />
      {of.table && (
        <>
          {!missing && <LineFaults lines={lines} />}
          {!missing && nowhere.length > 0 && (
            <p role="alert" className="loss">
              {texts.nowhere(listed(nowhere.map(matchName)))}
            </p>
          )}
          <div>
            <Button disabled={missing || results.length === 0} loading={busy} onClick={() => void look()}>
              {words().event.schedule.lookAt(results.length)}
            </Button>
          </div>
        </>
      )}
      {looked && (
        <>
          <Findings findings={looked.findings} />
          <p role="status">{texts.would(looked.fresh, looked.corrected.length, looked.same)}</p>
          {looked.corrected.length > 0 && (
            <>
              <ul>
                {looked.corrected.map((id) => (
                  <li key={id}>{correction(id)}</li>
                ))}
              </ul>
              <Checkbox
                label={texts.correctsThese(looked.corrected.length)}
                checked={sure}
                onChange={(change) => setSure(change.currentTarget.checked)}
              />
            </>
          )}
          <div>
            <Button
              disabled={wrong || looked.entries.length === 0 || (looked.corrected.length > 0 && !sure)}
              loading={busy}
              onClick={() => void apply()}
            >
              {texts.enterAll(looked.entries.length)}
            </Button>
          </div>
        </>
      )}
    </section>
  )
}
