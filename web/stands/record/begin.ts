import type { StandsDatabase } from '../data/database.ts'
import { madeId } from '../data/ids.ts'
import type { Me } from '../data/session.ts'
import type { Pack } from '../data/shapes.ts'
import { type About, type Draft, freshDraft } from './draft.ts'

/** Begins a record and keeps it before it is shown. */
export async function beginDraft(
  database: StandsDatabase,
  of: { pack: Pack; me: Me; about: About; now?: number },
): Promise<string> {
  const { pack, me, about, now = Date.now() } = of
  const game = { id: pack.event.game, revision: pack.game.revision }
  const draft = freshDraft({ id: madeId(now), event: pack.event.id, scout: me.id, game, about, begun: now })
  await database.drafts.add(draft)
  return draft.id
}

/** A copy of a sent record to be corrected: what was sent stays as it is. */
export function beginCorrection(
  database: StandsDatabase,
  { id, me, now = Date.now() }: { id: string; me: Me; now?: number },
): Promise<string | null> {
  const { drafts, taps } = database
  return database.transaction('rw', [drafts, taps], async () => {
    const old = await drafts.get(id)
    if (!old) return null
    const fresh: Draft = {
      ...old,
      id: madeId(now),
      scout: me.id,
      step: 'check',
      begun: now,
      replaces: old.id,
      reason: '',
    }
    await drafts.add(fresh)
    const pressed = await taps.where('draft').equals(id).toArray()
    await taps.bulkAdd(pressed.map((tap) => ({ ...tap, draft: fresh.id })))
    return fresh.id
  })
}

/** Throws a draft away, with its taps. A record that was made of it stays. */
export function discardDraft(database: StandsDatabase, id: string): Promise<void> {
  const { drafts, taps } = database
  return database.transaction('rw', [drafts, taps], async () => {
    await taps.where('draft').equals(id).delete()
    await drafts.delete(id)
  })
}
