import { cellsOf, moment, type Place, replacedBy } from './add.ts'
import type { Statements } from './intakeStatements.ts'
import type { Accepted, ApartReason, Batch, HashedRow, Outcome } from './types.ts'

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

  const add = (hashed: HashedRow) =>
    statements.add([workspaceId, received, person, ...cellsOf(hashed, replacedBy(hashed))])

  /** Undefined: it was added. A batch that is sent again is mostly held already: then asking costs less than trying. */
  function heldHash(hashed: HashedRow): string | undefined {
    const { id } = hashed.row
    const first = likelyHeld ? statements.hash(workspaceId, id) : undefined
    if (first !== undefined) return first
    likelyHeld = !add(hashed)
    return likelyHeld ? statements.hash(workspaceId, id) : undefined
  }

  function setApart({ row, hash, text }: HashedRow, reason: ApartReason): Outcome {
    const cells = [workspaceId, received, person, row.id, row.event, row.device, hash, text, reason]
    if (statements.keepApart(cells)) apart.add(row.event)
    return { outcome: 'apart', reason }
  }

  const outcomes = batch.rows.map((hashed): Outcome => {
    const { event } = hashed.row
    if (!isKnown(event)) return setApart(hashed, 'unknownEvent')
    const held = heldHash(hashed)
    if (held === undefined) {
      fresh.add(event)
      return { outcome: 'held', again: false }
    }
    return held === hashed.hash ? { outcome: 'held', again: true } : setApart(hashed, 'otherContent')
  })

  if (session !== null) statements.note([batch.unsent, batch.app ?? null, received, workspaceId, session])
  const counted = statements.counted(workspaceId, device)
  const receipt = { held: counted.held, quarantined: counted.apart, at: at.toISOString() }
  return { outcomes, receipt, fresh: [...fresh], apart: [...apart] }
}
