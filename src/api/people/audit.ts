import type { AuditNote } from '../../store/types.ts'
import type { Who } from '../who.ts'

/** Fields of a request that name what it is about, in the order in which they are told. Nothing secret is among them. */
const subjects = [
  'kind',
  'event',
  'match',
  'sheet',
  'code',
  'alliance',
  'position',
  'team',
  'person',
  'device',
  'invitation',
  'record',
  'id',
]

/** Further fields that say how it was changed. */
const details = ['role', 'undo', 'base', 'revision', 'note', 'anyway', 'nickname', 'name', 'hours', 'count', 'reason']

const plain = (value: unknown): value is string | number | boolean =>
  ['string', 'number', 'boolean'].includes(typeof value)

type Fields = { readonly [field: string]: unknown }

const fieldsOf = (value: unknown): Fields => (typeof value === 'object' && value !== null ? (value as Fields) : {})

function picked(from: Fields, names: readonly string[]): Fields {
  return Object.fromEntries(names.filter((name) => plain(from[name])).map((name) => [name, from[name]]))
}

/** What is kept of a change: who made it, on which device, and what it was about. Bodies and secrets are not. */
export function noteOf(who: Who, of: { action: string; input: unknown; answer?: unknown }): AuditNote {
  const input = fieldsOf(of.input)
  const named = picked(input, subjects)
  // What the server named itself stands in its answer.
  const about = Object.keys(named).length > 0 ? named : picked(fieldsOf(of.answer), ['code', 'id'])
  return {
    person: who.person,
    device: who.device,
    action: of.action,
    subject: Object.values(about).join(' ').slice(0, 300),
    detail: picked(input, details),
  }
}
