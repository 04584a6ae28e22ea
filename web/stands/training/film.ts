import type { Point } from '../../../src/model/documents/types.ts'
import type { Happening } from '../../../src/model/scouting/types.ts'
import type { Ask } from '../data/post.ts'
import { askFor } from '../data/post.ts'

/** A simulated match as the server tells it. */
export interface Film {
  robots: { came: boolean; track: [number, number, number][]; happened: Happening[] }[]
}

const isFilm = (value: unknown): value is Film =>
  Array.isArray((value as Film | null)?.robots) && (value as Film).robots.every(({ track }) => Array.isArray(track))

export const askFilm = (ask: Ask, { event, seed, now }: { event: string; seed: number; now: number }) =>
  askFor(ask, { path: `/api/stands/${encodeURIComponent(event)}/training?seed=${seed}`, now }, isFilm)

/** Where a robot is at a time (s), in its own alliance's coordinates. */
export function whereAt(track: Film['robots'][number]['track'], time: number): Point {
  const after = track.findIndex(([at]) => at > time)
  const next = track[after]
  const last = track[after < 0 ? track.length - 1 : Math.max(0, after - 1)]!
  if (!next || next[0] <= last[0]) return [last[1], last[2]]
  const share = Math.max(0, (time - last[0]) / (next[0] - last[0]))
  return [last[1] + (next[1] - last[1]) * share, last[2] + (next[2] - last[2]) * share]
}
