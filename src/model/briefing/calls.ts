import { habitPoints } from '../match/habitPoints.ts'
import { differenceOf } from './differences.ts'
import type { BriefingRequest, Call, Mean, PlayedVersion, PlayVersions, RobotCall, Version } from './types.ts'
import { optionsOf, someDraws } from './ways.ts'

/** Matches that each time is played in. */
const matches = 1000
/** Times are looked at so far apart (s): what a coach can call, and what 'late' and 'early' mean. */
const apart = 3
const steps = { first: 2, last: 20 }

/** The search of one robot's time: by step, what was played; the best so far. */
interface Search {
  robot: number
  best: number
  done: boolean
  played: Map<number | 'never', PlayedVersion>
}

const withCall = (version: Version, robot: number, call: Call): Version => ({
  ...version,
  calls: version.calls.map((own, i) => (i === robot ? call : own)) as unknown as Version['calls'],
})

/**
 * When each of ours goes for its finish, the others as they were seen to; null for a robot that has none. From a first guess each
 * climbs to a time than which neither neighbour is better, in matches of the same luck; all robots are asked about together.
 */
export async function callsOf(
  request: BriefingRequest,
  version: Version,
  play: PlayVersions,
): Promise<(RobotCall | null)[]> {
  const searches = request.ours.map(
    ({ robot }, i): Search => ({
      robot: i,
      best: guessed(request, version, i),
      done: Object.keys(robot.finish).length === 0,
      played: new Map(),
    }),
  )
  while (searches.some(({ done }) => !done)) {
    const asked = searches.filter(({ done }) => !done).flatMap(missing)
    const played = await play(
      asked.map(({ search, step }) => withCall(version, search.robot, step === 'never' ? step : step * apart)),
      { from: 0, to: matches },
    )
    for (const [k, { search, step }] of asked.entries()) search.played.set(step, played[k]!)
    for (const search of searches) if (!search.done) climb(search)
  }
  return searches.map(callIn)
}

/** What has to be played before the next step: the best so far, its neighbours, and playing on. */
function missing(search: Search): { search: Search; step: number | 'never' }[] {
  const { best, played } = search
  return ([best, best + 1, best - 1, 'never'] as const)
    .filter((step) => !played.has(step))
    .map((step) => ({ search, step }))
}

function climb(search: Search): void {
  const { best, played } = search
  const better = [best - 1, best + 1]
    .filter((step) => step >= steps.first && step <= steps.last)
    .map((step) => ({ step, gain: differenceOf(played.get(step)!, played.get(best)!).points.mean }))
    .sort((a, b) => b.gain - a.gain)[0]
  if (better && better.gain > 0) search.best = better.step
  else search.done = true
}

function callIn({ best, played }: Search): RobotCall | null {
  const at = played.get(best)
  if (!at) return null
  const cost = (step: number | 'never'): Mean => differenceOf(at, played.get(step)!).points
  const gain = cost('never')
  return {
    at: gain.mean > 2 * gain.standardError ? best * apart : null,
    early3: cost(best + 1),
    late3: cost(best - 1),
  }
}

/** By the closed form: nobody in its way. */
function guessed(request: BriefingRequest, version: Version, robot: number): number {
  let best = { step: steps.first, total: Number.NEGATIVE_INFINITY }
  for (let step = steps.first; step <= steps.last; step++) {
    const option = optionsOf(request, withCall(version, robot, step * apart))[robot]!
    const total = habitPoints(request.game, someDraws(option))?.total ?? 0
    if (total > best.total) best = { step, total }
  }
  return best.step
}
