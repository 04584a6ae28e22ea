import { harbour } from '../model/documents/harbour.ts'
import { event } from './harbourEvent.ts'

/** Puts the game and the event into a server, by the addresses that everybody uses. */
export async function openEvent(url: string): Promise<void> {
  const game = harbour()
  for (const [kind, body] of [
    ['game', game],
    ['event', event],
  ] as const) {
    const answer = await fetch(`${url}/api/documents/${kind}/${body.id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ base: null, body }),
    })
    if (!answer.ok) throw new Error(`${kind}: ${answer.status} ${await answer.text()}`)
  }
}
