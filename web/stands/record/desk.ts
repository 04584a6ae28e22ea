import type { Game } from '../../../src/model/documents/types.ts'
import type { KeptTap, StandsDatabase } from '../data/database.ts'
import { tapsOf } from '../data/outbox.ts'
import type { Draft, Tap } from './draft.ts'

/** A draft as it stands in the phone's database. */
export interface Read {
  draft: Draft
  taps: Tap[]
  game: Game
}

/** Null where there is no such draft, or its game is not here. */
export async function readDraft(database: StandsDatabase, id: string): Promise<Read | null> {
  const draft = await database.drafts.get(id)
  const game = draft && (await database.games.get([draft.game.id, draft.game.revision]))
  return draft && game ? { draft, game: game.body, taps: await tapsOf(database, id) } : null
}

const lastOf = ({ taps }: StandsDatabase, draft: string): Promise<KeptTap | undefined> =>
  taps.where('[draft+order]').between([draft, 0], [draft, Number.MAX_SAFE_INTEGER]).last()

/** Counted from the taps that are there, so that two tabs with the same draft take no place from each other. */
export async function addTap(database: StandsDatabase, draft: string, tap: Tap): Promise<void> {
  const order = ((await lastOf(database, draft))?.order ?? -1) + 1
  await database.taps.add({ ...tap, draft, order })
}

export async function dropLast(database: StandsDatabase, draft: string): Promise<void> {
  const last = await lastOf(database, draft)
  if (last) await database.taps.delete([draft, last.order])
}

type Write = () => Promise<unknown>

/**
 * Writes what is pressed in its order, all that waits in one transaction. What the disk refuses waits for the next press, so that
 * the screen never shows more than what will be in the record.
 */
export class Writer {
  /** What the screen shows: ahead of the database by what waits. */
  now: Read | null = null
  refused = false
  shown: () => void = () => {}
  readonly #database: StandsDatabase
  #waiting: Write[] = []
  #running: Promise<boolean> | null = null

  constructor(database: StandsDatabase) {
    this.#database = database
  }

  get waits(): boolean {
    return this.#waiting.length > 0
  }

  write(next: Read, write: Write): void {
    this.now = next
    this.#waiting.push(write)
    this.shown()
    void this.settle()
  }

  /** Resolves to whether nothing waits any more. */
  settle(): Promise<boolean> {
    this.#running ??= this.#writeAll().finally(() => {
      this.#running = null
    })
    return this.#running
  }

  async #writeAll(): Promise<boolean> {
    const { drafts, taps } = this.#database
    while (this.waits) {
      const batch = [...this.#waiting]
      try {
        await this.#database.transaction('rw', [drafts, taps], async () => {
          for (const write of batch) await write()
        })
      } catch {
        this.refused = true
        this.shown()
        return false
      }
      this.#waiting = this.#waiting.slice(batch.length)
      this.refused = false
      this.shown()
    }
    return true
  }
}
