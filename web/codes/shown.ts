import { framesOf, stillFrame } from '../../src/model/scouting/code/index.ts'

/** What a screen shows: one code that stands, or a sequence that runs until it was read. */
export type Shown =
  | { kind: 'still'; text: string }
  | { kind: 'sequence'; needed: number; frame: (index: number) => string }

/** A still code's bytes at most, what is around the message included. */
export const stillBytes = 300
const aroundStill = 6

export function shownOf(message: Uint8Array): Shown {
  if (message.length + aroundStill <= stillBytes) return { kind: 'still', text: stillFrame(message) }
  return { kind: 'sequence', ...framesOf(message) }
}
