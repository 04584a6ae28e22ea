import { bodyIn, textIn } from '../../model/scouting/cells.ts'
import { moment, type Place } from '../records/add.ts'
import { rowsOf } from '../records/batch.ts'
import type { Accepted, ApartReason, Batch, Cells, Outcome } from '../records/types.ts'
import type { Statements } from './intakeStatements.ts'

/**
 * One batch, within a transaction. Ids are unique in the database, which alone decides who came first: what is refused there is
 * compared by hash. Same content is held already; other content is kept apart.
 */
export function acceptBatch(statements: Statements, place: Place, batch: Batch): Accepted {
  const { workspaceId, at } = place
  const { person, session, device } = batch
  const received = moment(at)
  const known = new Map<string, boolean>()
  const fresh = new Set<string>()
  const apart = new Set<string>()
  let likelyHeld = false

  function isKnown(event: string): boolean {
    const answer = known.get(event) ?? statements.knowsEvent(workspaceId, event)
    known.set(event, answer)
    return answer
  }

  /** Undefined: it is not held. A batch that is sent again is mostly held already: then asking costs less than trying. */
  function heldHash(cells: Cells): string | undefined {
    const id = textIn(cells, 'id')
    if (bodyIn(cells) === null) return statements.hash(workspaceId, id)
    const first = likelyHeld ? statements.hash(workspaceId, id) : undefined
    if (first !== undefined) return first
    likelyHeld = !statements.add([workspaceId, received, person, ...cells])
    return likelyHeld ? statements.hash(workspaceId, id) : undefined
  }

  function setApart(cells: Cells, reason: ApartReason): Outcome {
    const body = bodyIn(cells)
    if (body === null) return { outcome: 'missing' }
    const [id, event, device, hash] = (['id', 'event', 'device', 'hash'] as const).map((name) => textIn(cells, name))
    if (statements.keepApart([workspaceId, received, person, id, event, device, hash, body, reason])) apart.add(event!)
    return { outcome: 'apart', reason }
  }

  const outcomes = rowsOf(batch).map((cells): Outcome => {
    const event = textIn(cells, 'event')
    if (!isKnown(event)) return setApart(cells, 'unknownEvent')
    const held = heldHash(cells)
    if (held === textIn(cells, 'hash')) return { outcome: 'held', again: true }
    if (held !== undefined) return setApart(cells, 'otherContent')
    if (bodyIn(cells) === null) return { outcome: 'missing' }
    fresh.add(event)
    return { outcome: 'held', again: false }
  })

  if (session !== null) statements.note([batch.unsent, batch.app ?? null, received, workspaceId, session])
  const counted = statements.counted(workspaceId, device)
  const receipt = { held: counted.held, quarantined: counted.apart, at: at.toISOString() }
  return { outcomes, receipt, fresh: [...fresh], apart: [...apart] }
}
