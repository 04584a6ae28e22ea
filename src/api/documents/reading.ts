import { checkGame, type ReadingRecord, within } from '../../model/documents/index.ts'
import type { WorkspaceStore } from '../../store/types.ts'
import { refuse } from '../errors.ts'
import { found } from '../sentences.ts'
import { notFound, type Outcome, read, type Stored } from './read.ts'
import { parsed } from './save.ts'

interface Asked {
  /** Id of the game. */
  id: string
  /** The revision that is to stay the newest rules, from which the reading's were made. */
  base: number
  body: unknown
  reading: Pick<ReadingRecord, 'id' | 'name' | 'rule'>
}

export type ReadingOutcome =
  | { saved: { reading: Stored<'reading'>; game: Stored<'game'> } }
  | Extract<Outcome, { conflict: unknown }>

/**
 * Keeps changed rules as a reading and leaves the printed ones in place: a revision with the change, the reading that names
 * it, and the revision before it again as the newest; all three or none.
 */
export async function saveAsReading(workspace: WorkspaceStore, asked: Asked): Promise<ReadingOutcome> {
  const { id, base, reading } = asked
  const game = parsed('game', asked.body)
  if (game.id !== id) {
    refuse([found(['body', 'id'], { code: 'otherHead', parts: { field: 'id', inside: game.id, asked: id } })])
  }
  refuse(within(['body'], checkGame(game)))
  const printed = await read(workspace, 'game', { id, revision: base })
  if (!printed) throw notFound('game', { id, revision: base })
  const body: ReadingRecord = { format: 1, ...reading, game: { id, revision: base + 1 } }
  const outcome = await workspace.saveAll([
    { kind: 'game', id, name: game.name, body: game, base, note: reading.name },
    { kind: 'reading', id: reading.id, name: reading.name, body, base: null },
    { kind: 'game', id, name: printed.name, body: printed.body, base: base + 1, note: `Revision ${base} restored` },
  ])
  if ('conflict' in outcome) return outcome as Extract<Outcome, { conflict: unknown }>
  const [, named, restored] = outcome.saved
  return { saved: { reading: named as Stored<'reading'>, game: restored as Stored<'game'> } }
}
