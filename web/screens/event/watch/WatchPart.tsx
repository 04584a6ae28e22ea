import { Button } from '@mantine/core'
import { useState } from 'react'
import { voided } from '../../../../src/model/event/order.ts'
import { seatKey } from '../../../../src/model/event/seats.ts'
import type { Assignment } from '../../../../src/model/scouting/types.ts'
import { useEventChanges } from '../../../data/events.ts'
import { Empty } from '../../../shell/states.tsx'
import { TableDownload } from '../../../shell/TableDownload.tsx'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import { DealForm } from './DealForm.tsx'
import { WatchGrid, watchTable } from './WatchGrid.tsx'

/** Who watches whom: shared out, changed by hand, printed. */
export function WatchPart(page: EventPage) {
  const { event, schedule, results, watching, lead } = page
  const texts = words().event.watch
  const { assign } = useEventChanges(event.id)
  const [edited, setEdited] = useState<Assignment[] | null>(null)
  const [undo, setUndo] = useState<Assignment[] | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const matches = schedule.matches.map(({ match }) => match)
  const over = new Set(results.flatMap(({ match, result }) => (result === null ? [] : [match])))
  const gone = voided(matches)
  const shown = merged(watching.assignments, edited ?? [])
  const save = async (assignments: Assignment[], mark: string, before: Assignment[] | null) => {
    setTrouble(null)
    try {
      await assign.mutateAsync({ mark, assignments })
      setEdited(null)
      setUndo(before)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  /** What stands at these seats now: puts them back. */
  const now = (of: readonly Assignment[]): Assignment[] => {
    const by = new Map(watching.assignments.map((each) => [placeOf(each), each.person]))
    return of.map((each) => ({ ...each, person: by.get(placeOf(each)) ?? null }))
  }
  if (matches.length === 0)
    return (
      <Empty title={texts.empty}>
        <p>{texts.emptyHow}</p>
      </Empty>
    )
  return (
    <>
      {lead && <DealForm page={page} edited={edited} onDealt={(dealt) => setEdited(dealt)} />}
      <section className="sheet stack" aria-labelledby="watch">
        <h2 id="watch">{words().event.parts.watch}</h2>
        {trouble && (
          <p role="alert" className="loss">
            {trouble}
          </p>
        )}
        {edited && (
          <div className="row no-print">
            <Button loading={assign.isPending} onClick={() => void save(edited, watching.mark, now(edited))}>
              {texts.apply}
            </Button>
            <Button variant="default" onClick={() => setEdited(null)}>
              {texts.discard}
            </Button>
            <span role="status">{texts.unsaved}</span>
          </div>
        )}
        {!edited && undo && (
          <p role="status">
            {texts.saved}{' '}
            <button type="button" className="opens" onClick={() => void save(undo, watching.mark, null)}>
              {words().event.schedule.undo}
            </button>
          </p>
        )}
        {shown.every(({ person }) => person === null) && <p>{lead ? texts.nobody : texts.nobodyYet}</p>}
        <WatchGrid
          page={page}
          matches={matches.filter(({ id }) => !gone.has(id))}
          over={over}
          assignments={shown}
          onChange={lead ? (assignment) => setEdited(merged(edited ?? [], [assignment])) : null}
        />
        <TableDownload title={words().event.parts.watch} table={() => watchTable(page, shown)} />
        <div className="row no-print">
          <Button variant="default" onClick={() => window.print()}>
            {words().event.schedule.print}
          </Button>
        </div>
      </section>
    </>
  )
}

const placeOf = ({ match, seat }: Assignment): string => `${match} ${seatKey(seat)}`

function merged(before: readonly Assignment[], given: readonly Assignment[]): Assignment[] {
  const replaced = new Set(given.map(placeOf))
  return [...before.filter((each) => !replaced.has(placeOf(each))), ...given]
}
