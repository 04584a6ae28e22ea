import * as crypto from 'node:crypto'
import { cellsOf, textIn } from '../../model/scouting/cells.ts'
import { canonicalJson, type Row, type RowAnswer } from '../../model/scouting/index.ts'
import type { ApartReason, Cells, HashedRow, Outcome } from '../../store/types.ts'
import { problemsOf } from '../contracts/index.ts'
import { row as rowContract } from '../contracts/scouting/index.ts'
import type { Who } from '../who.ts'
import { quickObservation } from './reading/quick.ts'

// Where the engine has it, without an object for each text.
const { hash } = crypto as { hash?: (algorithm: string, data: string | Uint8Array, encoding: 'hex') => string }

export const hashOf = (content: string | Uint8Array): string =>
  hash?.('sha256', content, 'hex') ?? crypto.createHash('sha256').update(content).digest('hex')

export function hashed(row: Row): HashedRow {
  const text = canonicalJson(row)
  return { row, text, hash: hashOf(text) }
}

/** Why a row can not be taken: a sentence for whoever holds the phone. */
export interface Refused {
  refused: string
  id: string
}

/** One row as it was sent. */
export function readRow(sent: unknown): Cells | Refused {
  return readUsualRow(sent) ?? readAnyRow(sent)
}

/** The same where it is surely an observation of the usual form; undefined where its contract has to look. */
export function readUsualRow(sent: unknown): Cells | undefined {
  const text = quickObservation(sent)
  return text === undefined ? undefined : cellsOf({ row: sent as Row, text, hash: hashOf(text) })
}

/** The same by the contract, which every row can be asked of. */
export function readAnyRow(sent: unknown): Cells | Refused {
  const read = rowContract.safeParse(sent)
  if (!read.success) return { refused: problemsOf(read.error)[0]!.message, id: idIn(sent) }
  const { data } = read
  const refused = disagreement(data)
  return refused === undefined ? cellsOf(hashed(data)) : { refused, id: data.id }
}

const idIn = (sent: unknown): string => {
  const id = (sent as { id?: unknown } | null)?.id
  return typeof id === 'string' ? id.slice(0, 100) : ''
}

/** A document says again what its row says; what differs would be found under one and not under the other. */
export function disagreement(row: Row): string | undefined {
  if (row.kind === 'photo' && row.body.id !== row.id) return 'The photo has another id than its row'
  if (row.kind === 'ranking' && row.body.scout !== row.scout) return 'The ranking has another scout than its row'
  if (row.kind !== 'observation') return undefined
  const differs = (['id', 'scout', 'device', 'sequence'] as const).find((key) => row.body[key] !== row[key])
  return differs && `The observation has another ${differs} than its row`
}

/** A lead may hand in what others recorded: from codes, files and sheets. */
export const isStranger = (scout: string, { person, role }: Who): boolean =>
  person !== null && role !== 'lead' && scout !== person

export function ofStranger(cells: Cells, who: Who): Refused | undefined {
  if (!isStranger(textIn(cells, 'scout'), who)) return undefined
  const refused = 'Somebody else recorded this. Sign in as them on this phone, or show it to a lead'
  return { refused, id: textIn(cells, 'id') }
}

const apart: { readonly [Reason in ApartReason]: string } = {
  otherContent: 'The server has another record under the same id. Both are kept, and a lead decides which one counts',
  unknownEvent: 'The server does not know the event of this record. It is kept apart until a lead decides',
}

export function answerOf(id: string, outcome: Outcome): RowAnswer {
  if (outcome.outcome === 'held') return { id, outcome: 'held', again: outcome.again }
  if (outcome.outcome === 'apart') return { id, outcome: 'quarantined', why: apart[outcome.reason] }
  throw new Error(`Record ${id} was neither held nor read`)
}

/** The answers in the order of the rows that were sent. `outcomes` are those of the rows that could be read. */
export function answersOf(rows: readonly (Cells | Refused)[], outcomes: readonly Outcome[]): RowAnswer[] {
  let index = 0
  return rows.map((each): RowAnswer => {
    if ('refused' in each) return { id: each.id, outcome: 'refused', why: each.refused }
    return answerOf(textIn(each, 'id'), outcomes[index++]!)
  })
}
