import { version } from '../../../package.json'
import type { Standing } from '../parts/means.tsx'
import { steadyNow } from '../record/steady.ts'
import { recall, remember, type StandsDatabase } from './database.ts'
import { renewDrill } from './drill.ts'
import { renewPack } from './pack.ts'
import { startSender } from './sender.ts'
import { renewSession } from './session.ts'
import { tellTakeovers } from './takeover.ts'

/** How often a page that is looked at asks for what is new (ms). */
const every = 60_000

/** A link may name the event: `/stands/?event=…`. */
async function asAddressed(database: StandsDatabase): Promise<void> {
  const named = new URLSearchParams(location.search).get('event')
  if (named === null) return
  await remember(database, 'event', named)
  history.replaceState(null, '', location.pathname + location.hash)
}

/** What the page does by itself as long as it is open: sends, and asks for what is new. */
export function standingOf(database: StandsDatabase): Standing {
  const now = () => Date.now()
  const ask: typeof fetch = (...of) => fetch(...of)
  const sender = startSender({ database, ask, now: steadyNow, app: version, locks: navigator.locks })

  const refresh = async () => {
    await asAddressed(database)
    const session = await renewSession(database, ask, now())
    if ('failed' in session) return false
    // It answers again: what waits for it goes at once, not when its pause is over.
    if (sender.now().doing === 'waiting') sender.wake()
    await tellTakeovers(database, ask, now())
    const event = await recall(database, 'event')
    if (event === undefined) return true
    const newest = (await renewPack({ database, ask, now: now() }, event)) === 'newest'
    if (newest) await renewDrill({ database, ask, now: now() }, event)
    return newest
  }

  const look = () => {
    if (document.visibilityState !== 'visible') return
    sender.wake()
    void refresh().catch(() => false)
  }
  document.addEventListener('visibilitychange', look)
  addEventListener('focus', look)
  addEventListener('online', look)
  addEventListener('pointerdown', () => sender.nudge())
  setInterval(() => {
    if (document.visibilityState === 'visible') void refresh().catch(() => false)
  }, every)
  look()
  return { database, sender, refresh }
}
