import type { BringReport, EventContents } from '../../model/event/archive/index.ts'
import type { By } from '../event/types.ts'

/** What a file holds of an event, with the text of each record that is kept and hashed. */
export interface BroughtFile {
  contents: EventContents
  /** Canonical JSON of a row, by its hash. */
  texts: ReadonlyMap<string, string>
}

/** Somebody who came with a file and is no member here. */
export interface NamedPerson {
  id: string
  /** Null: a lead has removed it. */
  nickname: string | null
}

/** Whole events out of this workspace and into it. */
export interface ExchangeStore {
  /** Everything of an event as it is at one moment; null where there is none. */
  contents(event: string): Promise<EventContents | null>
  /** What those are called who came with files and are no members here. */
  named(): Promise<NamedPerson[]>
  /** Forgets what somebody is called who came with a file, for good; what this person recorded stays. False: nobody came with that id. */
  forgetName(id: string): Promise<boolean>
  /**
   * Takes what a file has and this workspace has not, in one commit; with `preview` says only what that would be. Throws
   * StorageFull when there is no room.
   */
  bring(file: BroughtFile, as: { preview: boolean; by: By; kind: 'archive' | 'tables' }): Promise<BringReport>
}
