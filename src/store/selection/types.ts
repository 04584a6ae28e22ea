import type { KeptLine, Topic, Written } from '../../model/picks/protocol/index.ts'
import type { By } from '../event/types.ts'

export interface LinesToAdd {
  /** All lines are of it. */
  topic: Topic
  /** Id of the newest line of the topic that was seen; null: none. */
  after: string | null
  lines: readonly Written[]
  by: By
  /** Whether the lines can follow those that are kept; what it says is handed back, and nothing is kept. */
  judge(before: readonly KeptLine[]): NotTaken | null
}

/** Opaque for the store. */
export type NotTaken = object

export type AddLinesOutcome = { kept: KeptLine[] } | { stale: KeptLine[] } | { refused: NotTaken }

/** What was called out at the selections of a workspace's events. Lines are added, never changed and never deleted. */
export interface SelectionStore {
  /** All of an event, oldest first. */
  lines(event: string): Promise<KeptLine[]>
  /**
   * All of the lines or none. `stale`: somebody wrote a line of the topic meanwhile; what is kept by now. Sent twice they are kept once, and
   * answered alike.
   */
  add(event: string, of: LinesToAdd): Promise<AddLinesOutcome>
}
