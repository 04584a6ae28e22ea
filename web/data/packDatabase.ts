import Dexie, { type EntityTable } from 'dexie'
import type { EventPack } from '../../src/api/pack/contracts.ts'
import { packDatabaseName } from './forgetPacks.ts'

export interface KeptPack {
  event: string
  pack: EventPack
}

type PackDatabase = Dexie & { packs: EntityTable<KeptPack, 'event'> }

let open: PackDatabase | null = null

/** What this browser keeps of events. A change of tables is a further `version`. */
function database(): PackDatabase {
  if (open) return open
  open = new Dexie(packDatabaseName) as PackDatabase
  open.version(1).stores({ packs: 'event' })
  return open
}

/** A pack that was kept; null where there is none, or where the browser keeps nothing. */
export async function keptPack(event: string): Promise<EventPack | null> {
  try {
    return (await database().packs.get(event))?.pack ?? null
  } catch {
    return null
  }
}

/** Keeps a pack; null: there is none any more. A browser that keeps nothing has it for as long as the page is open. */
export async function keepPack(event: string, pack: EventPack | null): Promise<void> {
  try {
    const { packs } = database()
    if (pack) await packs.put({ event, pack })
    else await packs.delete(event)
  } catch {
    // The answer itself is there; only its copy is missing.
  }
}
