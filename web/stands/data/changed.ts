import { type Ask, askFor } from './post.ts'

/** What a record changed: pieces tried a match as the robot's are believed without it and with it. */
export interface Changed {
  record: string
  team: string
  without: number
  with: number
  matches: number
}

const isChange = (value: unknown): value is Changed => {
  const { record, team, without, with: now, matches } = (value ?? {}) as { [name: string]: unknown }
  return (
    typeof record === 'string' &&
    typeof team === 'string' &&
    typeof without === 'number' &&
    typeof now === 'number' &&
    typeof matches === 'number'
  )
}

const isChanged = (value: unknown): value is Changed[] => Array.isArray(value) && value.every(isChange)

/** What own records changed, as the server sees it now; null where it can not be asked. */
export async function askChanged(ask: Ask, event: string, records: readonly string[]): Promise<Changed[] | null> {
  const body = JSON.stringify({ records })
  const init = { method: 'POST', headers: { 'content-type': 'application/json' }, body }
  const path = `/api/events/${encodeURIComponent(event)}/changed`
  const found = await askFor(ask, { path, init, now: Date.now() }, isChanged)
  return 'answer' in found ? found.answer : null
}
