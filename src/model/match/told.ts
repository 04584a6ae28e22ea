import type { Seats } from './seats.ts'

/** What the event loop tells by numbers, in the words of a replay; null for what no replay shows. */
export function eventOf(told: {
  kind: number
  leg: ReturnType<Seats['legAt']>
  id: string
  until: number
  more: number
  ids: readonly string[]
}): object | null {
  const { kind, leg, id: place, until, more, ids } = told
  switch (kind) {
    case 0:
      return leg ? { kind: 'drives', from: leg.from.at, to: leg.spot, until, place, load: leg.from.load } : null
    case 1:
      return { kind: 'queues', place }
    case 2:
      return { kind: 'waits', place }
    case 3:
      return { kind: 'works', place, until, load: more }
    case 4:
      return { kind: 'places', place }
    case 5:
      return { kind: 'finishes', place: more < 0 ? null : (ids[more] as string) }
    case 6:
      return { kind: 'marks', until }
    case 7:
      return { kind: 'rests' }
    case 8:
      return { kind: 'stops' }
    default:
      return null
  }
}
