import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { Behind } from '../../src/api/estimates/atOnce.ts'
import type { AgreedPlan, PlanBody } from '../../src/model/briefing/agreed.ts'
import { assumedSlowing, briefingSeed } from '../../src/model/briefing/given.ts'
import type { ByHand } from '../../src/model/briefing/ownLineUp.ts'
import type { Briefing, BriefingRequest } from '../../src/model/briefing/types.ts'
import type { Option } from '../../src/model/documents/types.ts'
import type { Alliance, Match } from '../../src/model/scouting/types.ts'
import { askModel } from '../worker/client.ts'
import { client, said, Unreachable } from './api.ts'
import { type EventPack, type Packed, packKey } from './eventPack.ts'
import { ask } from './records.ts'

/** A briefing as it was made, and from what. */
export interface Briefed {
  match: string
  alliance: Alliance
  records: number
  neverSeen: string[]
  from: string
  madeAt: string
  /** What came in since and is not in it, where the server had made it before; null: nothing. */
  behind: Behind
  briefing: Briefing
  /** By this browser, from what it keeps. */
  here: boolean
  /** The line-up is one of our own. */
  byHand?: ByHand
}

/** Both sides of a match, ours first. */
export const sidesOf = (match: Match, alliance: Alliance) =>
  [match[alliance], match[alliance === 'red' ? 'blue' : 'red']] as const

/** A match as briefings play it, from a pack's robots. */
export function requestFor(
  { game, event, robots }: EventPack,
  { match, alliance }: { match: Match; alliance: Alliance },
): BriefingRequest {
  const [ours, theirs] = sidesOf(match, alliance).map((side) => side.map(({ team }) => robots[team]!)) as [
    Option[],
    Option[],
  ]
  return { game, level: event.level, ours, theirs, seed: briefingSeed, slowing: assumedSlowing }
}

/**
 * The briefing of a match: by the server, at once as it was made last, which says what that lacks, or by this browser's own worker from the pack where there is no server. Both come to the
 * same from the same records.
 */
export async function makeBriefing(
  { pack, kept, asking }: Packed,
  { match, alliance }: { match: Match; alliance: Alliance },
  progress: (done: number, all: number) => void,
): Promise<Briefed> {
  if (!kept && !asking) {
    const of = `${encodeURIComponent(pack.event.id)}/matches/${encodeURIComponent(match.id)}/briefing`
    try {
      const made = await ask<Omit<Briefed, 'here'>>(`/api/events/${of}?alliance=${alliance}&kept=true`)
      return { ...made, here: false }
    } catch (error) {
      if (!(error instanceof Unreachable)) throw error
    }
  }
  const request = requestFor(pack, { match, alliance })
  const briefing = await askModel('briefing', { request }, { progress, asked: true })
  return {
    match: match.id,
    alliance,
    records: pack.records,
    neverSeen: [...request.ours, ...request.theirs].flatMap(({ id }) => ((pack.seen[id] ?? 0) === 0 ? [id] : [])),
    from: pack.from,
    madeAt: pack.madeAt,
    behind: null,
    briefing,
    here: true,
  }
}

/** All that is said of a line-up of one's own, by this browser's worker from the robots that a briefing was made from. */
export async function briefByHand(
  request: BriefingRequest,
  { made, byHand }: { made: Briefed; byHand: ByHand },
  progress: (done: number, all: number) => void,
): Promise<Briefed> {
  const briefing = await askModel('briefing', { request, byHand }, { progress, asked: true })
  return { ...made, briefing, byHand }
}

/** Keeps what was agreed for a match. */
export function useAgree(event: string) {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: (plan: { match: string; from: string; body: PlanBody }) =>
      said(client.briefing.agree.mutate({ event, ...plan })) as unknown as Promise<AgreedPlan>,
    onSuccess: () => queries.invalidateQueries({ queryKey: packKey(event) }),
  })
}
