import { happenings, type Row } from '../../../model/scouting/types.ts'
import { longestMatch } from '../../contracts/scouting/shared.ts'
import {
  boolean,
  count,
  fields,
  id,
  listOf,
  matching,
  measure,
  nullable,
  one,
  oneOf,
  textUpTo,
  uuid,
} from './quickParts.ts'

const duringMatch = measure(0, longestMatch)
const pieces = count(0, 1000)
const revision = count(1, 1_000_000_000)
const sequence = count(0, 1_000_000_000)
const fouls = count(0, 100)
const note = textUpTo(2000)

const elapsed = measure(-60, longestMatch)
const what = oneOf(happenings)
const counted = oneOf(['each', 'estimate'])
const place = measure(-100, 1000)

/** By hand and not by `fields`, because a record has dozens of them. In the order of names, as canonical JSON is. */
function happening(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null) return undefined
  const of = value as { readonly [name: string]: unknown }
  let text = ''
  let found = 2
  if (of['counted'] !== undefined) {
    const written = counted(of['counted'])
    if (written === undefined) return undefined
    text += `"counted":${written},`
    found++
  }
  const at = elapsed(of['elapsed'])
  if (at === undefined) return undefined
  text += `"elapsed":${at},`
  if (of['goal'] !== undefined) {
    const written = id(of['goal'])
    if (written === undefined) return undefined
    text += `"goal":${written},`
    found++
  }
  if (of['n'] !== undefined) {
    const written = pieces(of['n'])
    if (written === undefined) return undefined
    text += `"n":${written},`
    found++
  }
  if (of['source'] !== undefined) {
    const written = id(of['source'])
    if (written === undefined) return undefined
    text += `"source":${written},`
    found++
  }
  const name = what(of['what'])
  if (name === undefined) return undefined
  text += `"what":${name}`
  if (of['x'] !== undefined) {
    const written = place(of['x'])
    if (written === undefined) return undefined
    text += `,"x":${written}`
    found++
  }
  if (of['y'] !== undefined) {
    const written = place(of['y'])
    if (written === undefined) return undefined
    text += `,"y":${written}`
    found++
  }
  return found === Object.keys(of).length ? `{${text}}` : undefined
}

const observation = fields(
  {
    device: id,
    format: one(1),
    game: revision,
    id: uuid,
    identifiedBy: oneOf(['number', 'position']),
    match: nullable(id),
    origin: oneOf(['live', 'video', 'practice']),
    scout: id,
    sequence,
    subject: oneOf(['robot', 'human']),
    team: matching(/^[A-Za-z0-9-]{1,12}$/),
  },
  {
    absent: boolean,
    counts: listOf(fields({ goal: id, missed: pieces, period: oneOf(['auto', 'teleop']), scored: pieces }), 40),
    defence: fields({ playedSeconds: duringMatch, received: oneOf(['none', 'some', 'heavy']) }),
    departedAt: duringMatch,
    driver: id,
    finish: fields({ achieved: nullable(id), attempted: nullable(id) }),
    fouls: fields({ major: fouls, minor: fouls }),
    leftStart: boolean,
    lostSeconds: duringMatch,
    note,
    replaces: uuid,
    robotRevision: revision,
    routine: id,
    startSpot: id,
    stoppedAt: duringMatch,
    timeline: listOf(happening, 2000),
  },
)

const row = fields(
  {
    body: observation,
    device: id,
    event: id,
    id: uuid,
    kind: oneOf(['observation']),
    made: matching(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/),
    scout: id,
    sequence,
  },
  {
    reason: note,
    seat: fields({ alliance: oneOf(['red', 'blue']), position: count(1, 3) }),
  },
)

/**
 * The canonical JSON of a row that is surely an observation as the contract allows it; undefined where the contract has to look,
 * because something is rare or wrong. Nine of ten rows are observations of the usual form, and the contract and `canonicalJson`,
 * which walk through each twice, take five times as long. Tests hold both against each other.
 */
export function quickObservation(sent: unknown): string | undefined {
  const text = row(sent)
  if (text === undefined) return undefined
  const { id, scout, device, sequence, body } = sent as Row & { kind: 'observation' }
  const same = body.id === id && body.scout === scout && body.device === device && body.sequence === sequence
  return same ? text : undefined
}
