import type { DocumentKind } from '../../src/model/documents/records.ts'
import { withValueAt } from './place.ts'

/** Where a document keeps its own id and name. */
export const headOf = {
  game: [],
  design: ['robot'],
  option: ['option'],
  comparison: [],
  decision: [],
  quickSheet: [],
  reading: [],
  timing: [],
  part: ['part'],
  event: [],
} as const satisfies {
  [kind in DocumentKind]: readonly string[]
}

/** The same document under another id and name. */
export function renamed(kind: DocumentKind, body: unknown, id: string, name: string): unknown {
  const head = headOf[kind]
  return withValueAt(withValueAt(body, [...head, 'id'], id), [...head, 'name'], name)
}
