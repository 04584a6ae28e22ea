import type { BringReport, EventContents } from '../../model/event/archive/index.ts'
import type { By } from '../event/types.ts'

/** What a file holds of an event, with the text of each record that is kept and hashed. */
export interface BroughtFile {
  contents: EventContents
  /** Canonical JSON of a row, by its hash. */
  texts: ReadonlyMap<string, string>
}

/** Whole events out of this workspace and into it. */
export interface ExchangeStore {
  /** Everything of an event as it is at one moment; null where there is none. */
  contents(event: string): Promise<EventContents | null>
  /** What those are called who came with files and are no members here. */
  named(): Promise<{ id: string; nickname: string }[]>
  /**
   * Takes what a file has and this workspace has not, in one commit; with `preview` says only what that would be. Throws
   * StorageFull when there is no room.
   */
  bring(file: BroughtFile, as: { preview: boolean; by: By; kind: 'archive' | 'tables' }): Promise<BringReport>
}
