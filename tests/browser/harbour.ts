import { game } from '../../seed/game.ts'
import type { Match, Row, Slot } from '../../src/model/scouting/index.ts'
import type { World } from './world.ts'

const slot = (team: string): Slot => ({ team, counts: true, state: 'expected' })
export const match: Match = {
  id: 'q12',
  phase: 'qualification',
  number: 12,
  play: 1,
  red: [slot('90001'), slot('90002'), slot('90003')],
  blue: [slot('90004'), slot('90005'), slot('90006')],
}

async function put(world: World, path: string, body: unknown): Promise<void> {
  const headers = { 'content-type': 'application/json' }
  const response = await fetch(world.url + path, { method: 'PUT', headers, body: JSON.stringify(body) })
  if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`)
}

/** An event of the demo's game with one match. */
export async function withEvent(world: World): Promise<void> {
  const teams = [...match.red, ...match.blue].map(({ team }) => ({ team }))
  const event = { format: 1, id: 'harbour', name: 'Harbour trial', game: game.id, teams }
  await put(world, '/api/documents/event/harbour', { base: null, body: event })
  const address = '/api/events/harbour/matches'
  const { mark } = (await (await fetch(world.url + address)).json()) as { mark: string }
  await put(world, address, { mark, matches: [match] })
}

/** All that the server holds of the event, as it was recorded. */
export async function held(world: World): Promise<Row[]> {
  const response = await fetch(`${world.url}/api/records?event=harbour`)
  return ((await response.json()) as { records: { row: Row }[] }).records.map(({ row }) => row)
}
