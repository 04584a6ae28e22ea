import { brief } from './brief.ts'
import { lanesOf } from './lanes.ts'
import type { ByHand } from './ownLineUp.ts'
import { VersionPlayer } from './player.ts'
import type { Briefing, BriefingRequest } from './types.ts'

/** A briefing by one player, at once: see `brief`. */
export function briefAlone(
  request: BriefingRequest,
  progress?: (done: number, all: number) => void,
  byHand?: ByHand,
): Promise<Briefing> {
  const player = new VersionPlayer(request)
  return brief(
    request,
    {
      play: async (versions, of) => versions.map((version) => player.play(version, of)),
      lanes: async (asked) => lanesOf(asked),
      ...(progress && { progress }),
    },
    byHand,
  )
}
