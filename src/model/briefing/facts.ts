import type { HabitDraw } from '../documents/habit.ts'
import type { Option } from '../documents/types.ts'
import { differenceOf, meanOf, wonBy } from './differences.ts'
import type { Standing } from './lineUps.ts'
import type { BriefingRequest, Fact, Feature, PlayVersions } from './types.ts'

/** Matches in which a line-up does without one of its robots. */
const without = 1000
/** A change is told where it is so many errors away from chance: some twenty questions are asked at once. */
const sure = 3

/** What would make the other line-up better than the best: a robot that does not come, or is otherwise than believed. */
export async function factsOf(
  request: BriefingRequest,
  [best, second]: readonly Standing[],
  play: PlayVersions,
): Promise<Fact[]> {
  if (!best || !second) return []
  const versions = request.ours.flatMap((_, absent) => [best, second].map(({ version }) => ({ ...version, absent })))
  const played = await play(versions, { from: 0, to: without })
  const missing = request.ours.map(({ id }, i): Fact => {
    const difference = differenceOf(played[2 * i + 1]!, played[2 * i]!)
    return { kind: 'absent', team: id, changes: difference.win.mean > sure * difference.win.standardError, difference }
  })
  return [...missing, ...numbers(request, best, second)]
}

const features: readonly Feature[] = ['pace', 'hits', 'finish']

/** What a draw says of a robot. `pace` as a factor on its times. */
function numberOf(option: Option, draw: HabitDraw, feature: Feature): number {
  if (feature === 'pace') return draw.time ?? 1
  if (feature === 'finish') return meanBy(draw.finish, null)
  return meanBy(draw.success, draw.goals ?? option.robot.habit?.goals ?? null)
}

function meanBy(values: { [id: string]: number } | undefined, weights: { [id: string]: number } | null): number {
  const ids = Object.keys(values ?? {})
  const total = ids.reduce((sum, id) => sum + (weights?.[id] ?? 1), 0)
  return total > 0 ? ids.reduce((sum, id) => sum + ((weights?.[id] ?? 1) / total) * (values![id] as number), 0) : 0
}

/**
 * The matches that both line-ups played, by what each robot's number was in them: where the number lies in its highest or lowest
 * third, is the other line-up better?
 */
function numbers(request: BriefingRequest, best: Standing, second: Standing): Fact[] {
  const { margins, met } = best.played
  const gain = Float64Array.from(margins, (margin, k) => wonBy(second.played.margins[k]!) - wonBy(margin))
  return [...request.ours, ...request.theirs].flatMap((option, robot) => {
    const draws = option.robot.habit?.draws ?? []
    if (draws.length < 3) return []
    return features.flatMap((what) => thirds(option, { draws, what, robot, gain, met }))
  })
}

function thirds(
  option: Option,
  of: { draws: readonly HabitDraw[]; what: Feature; robot: number; gain: Float64Array; met: Uint16Array },
): Fact[] {
  const { draws, what, robot, gain, met } = of
  const values = draws.map((draw) => numberOf(option, draw, what))
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] as number
  const [low, high, believed] = [at(1 / 3), at(2 / 3), at(1 / 2)]
  if (!(high > low)) return []
  const outside = (side: 'above' | 'below') => {
    const own = gain.filter((_, k) => {
      const value = values[met[6 * k + robot] as number] as number
      return side === 'above' ? value > high : value < low
    })
    const difference = own.length > 1 ? meanOf(own) : { mean: 0, standardError: 1 }
    return { side, value: side === 'above' ? high : low, difference }
  }
  return (['above', 'below'] as const)
    .map(outside)
    .filter(({ difference }) => difference.mean > sure * difference.standardError)
    .map(({ side, value, difference }) => ({
      kind: 'number',
      team: option.id,
      what,
      side,
      value,
      believed,
      difference,
    }))
}
