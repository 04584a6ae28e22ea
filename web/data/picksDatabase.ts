import Dexie, { type EntityTable } from 'dexie'
import type { KeptLine, Topic, Written } from '../../src/model/picks/protocol/index.ts'
import type { PackedRating } from '../../src/model/picks/scores/packed.ts'
import { picksDatabaseName } from './forgetPacks.ts'

/** What the server last said of an event. */
interface KeptOfEvent {
  event: string
  lines: KeptLine[]
}

export interface KeptRatings {
  event: string
  mark: string
  ratings: { [team: string]: PackedRating }
}

/** A line that waits for the server, in the order of writing. */
export interface Unsent {
  /** Counts on. */
  number?: number
  event: string
  topic: Topic
  /** The newest line of the topic that was seen when it was written; null: none. */
  after: string | null
  written: Written
}

type PicksDatabase = Dexie & {
  events: EntityTable<KeptOfEvent, 'event'>
  ratings: EntityTable<KeptRatings, 'event'>
  unsent: EntityTable<Unsent, 'number'>
}

let open: PicksDatabase | null = null

/** What this browser keeps of selections. A change of tables is a further `version`. */
function database(): PicksDatabase {
  if (open) return open
  open = new Dexie(picksDatabaseName) as PicksDatabase
  open.version(1).stores({ events: 'event', ratings: 'event', unsent: '++number, event' })
  return open
}

/** A browser that keeps nothing has what is there for as long as the page is open. */
const orNull = async <Of>(work: () => PromiseLike<Of>): Promise<Of | null> => {
  try {
    return await work()
  } catch {
    return null
  }
}

export const keptLines = async (event: string): Promise<KeptLine[] | null> =>
  (await orNull(() => database().events.get(event)))?.lines ?? null
export const keepLines = (event: string, lines: KeptLine[]) => orNull(() => database().events.put({ event, lines }))
export const keptRatings = async (event: string): Promise<KeptRatings | null> =>
  (await orNull(() => database().ratings.get(event))) ?? null
export const keepRatings = (ratings: KeptRatings) => orNull(() => database().ratings.put(ratings))

/** What the server said of an event; what waits for it stays. */
export async function forgetSelection(event: string): Promise<void> {
  await orNull(() => database().events.delete(event))
  await orNull(() => database().ratings.delete(event))
}

export const unsentLines = async (event: string): Promise<Unsent[]> =>
  (await orNull(() => database().unsent.where({ event }).sortBy('number'))) ?? []
/** Null: the browser keeps nothing, so that it is lost with the page. */
export const addUnsent = (rows: readonly Unsent[]) => orNull(() => database().unsent.bulkAdd([...rows]))
/** Written again behind what others wrote. */
export const moveUnsent = (event: string, id: string, after: string | null) =>
  orNull(() =>
    database()
      .unsent.where({ event })
      .filter(({ written }) => written.id === id)
      .modify({ after }),
  )
export const dropUnsent = async (event: string, ids: ReadonlySet<string>): Promise<void> => {
  await orNull(() =>
    database()
      .unsent.where({ event })
      .filter(({ written }) => ids.has(written.id))
      .delete(),
  )
}
