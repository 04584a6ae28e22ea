import { habitPoints } from '../match/habitPoints.ts'
import { differenceOf } from './differences.ts'
import type { BriefingRequest, Call, Mean, PlayedVersion, PlayVersions, RobotCall, Version } from './types.ts'
import { optionsOf, someDraws } from './ways.ts'

/** Matches that each time is played in. */
const matches = 1500
/** Times are looked at so far apart (s): what a coach can call, and what 'late' and 'early' mean. */
const apart = 3
const steps = { first: 2, last: 20 }

interface Times {
  at(step: number): Promise<PlayedVersion>
}

/** When each of ours goes for its finish, the others as they were seen to; null for a robot that has none. */
export async function callsOf(
  request: BriefingRequest,
  version: Version,
  play: PlayVersions,
): Promise<(RobotCall | null)[]> {
  return Promise.all(
    request.ours.map((option, i) =>
      callOf(request, { version, robot: i, finishes: Object.keys(option.robot.finish).length > 0 }, play),
    ),
  )
}

async function callOf(
  request: BriefingRequest,
  of: { version: Version; robot: number; finishes: boolean },
  play: PlayVersions,
): Promise<RobotCall | null> {
  if (!of.finishes) return null
  const withCall = (call: Call): Version => ({
    ...of.version,
    calls: of.version.calls.map((own, i) => (i === of.robot ? call : own)) as unknown as Version['calls'],
  })
  const played = new Map<number, Promise<PlayedVersion>>()
  const times: Times = {
    at: (step) => {
      const known = played.get(step) ?? play([withCall(step * apart)], { from: 0, to: matches }).then(([one]) => one!)
      played.set(step, known)
      return known
    },
  }
  const best = await climb(times, guessed(request, withCall, of.robot))
  const at = await times.at(best)
  const [never] = await play([withCall('never')], { from: 0, to: matches })
  const cost = async (step: number): Promise<Mean> => differenceOf(at, await times.at(step)).points
  const gain = differenceOf(at, never!).points
  const [early3, late3] = await Promise.all([cost(best + 1), cost(best - 1)])
  return { at: gain.mean > 2 * gain.standardError ? best * apart : null, early3, late3 }
}

/** From a first guess to a time than which neither neighbour is better, in matches of the same luck. */
async function climb(times: Times, guess: number): Promise<number> {
  let best = guess
  for (;;) {
    const around = [best - 1, best + 1].filter((step) => step >= steps.first && step <= steps.last)
    const [own, ...others] = await Promise.all([best, ...around].map((step) => times.at(step)))
    const better = others
      .map((other, k) => ({ step: around[k]!, gain: differenceOf(other, own!).points.mean }))
      .sort((a, b) => b.gain - a.gain)[0]
    if (!better || better.gain <= 0) return best
    best = better.step
  }
}

/** By the closed form: nobody in its way. */
function guessed(request: BriefingRequest, withCall: (call: Call) => Version, robot: number): number {
  let best = { step: steps.first as number, total: Number.NEGATIVE_INFINITY }
  for (let step: number = steps.first; step <= steps.last; step++) {
    const option = optionsOf(request, withCall(step * apart))[robot]!
    const total = habitPoints(request.game, someDraws(option))?.total ?? 0
    if (total > best.total) best = { step, total }
  }
  return best.step
}
