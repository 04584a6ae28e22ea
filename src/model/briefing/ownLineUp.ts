import { differenceOf, winOf } from './differences.ts'
import { planned } from './given.ts'
import { VersionPlayer } from './player.ts'
import type { BriefingRequest, Difference, Mean, Version } from './types.ts'
import { asSeen, goalsOf, waysOf } from './ways.ts'

/** What one of ours can be told to do: one of its ways (`waysOf`), or to stand in an opponent's way all match. */
export type Told = number | 'marks'

export interface OwnLineUp {
  told: readonly [Told, Told, Told]
  /** Place of the opponent that is stood in the way of, 0 to 2. */
  marked: number
}

/** A line-up of one's own, and the computed one that it stands instead of, by the goals of each robot. */
export interface ByHand {
  own: OwnLineUp
  best: readonly (readonly string[])[]
}

/** A line-up of one's own beside the computed one, on the same luck. */
export interface OwnBeside {
  win: Mean
  /** What it loses against the computed one; below 0: it is better. */
  loses: Difference
  /** Chance to win with the computed one. */
  best: Mean
}

/** What each of ours can be told: goals of each of its ways, most of its trips first; the first is as it was seen. */
export const choicesOf = ({ ours }: Pick<BriefingRequest, 'ours'>): string[][][] =>
  ours.map((option) => waysOf(option).map((way) => goalsOf(option, way)))

/** The ways of a line-up that a briefing tells by its goals. */
function waysWith(request: Pick<BriefingRequest, 'ours'>, goals: readonly (readonly string[])[]): Version['ways'] {
  const ways = choicesOf(request).map((choices, i) =>
    Math.max(
      0,
      choices.findIndex((each) => each.join() === goals[i]?.join()),
    ),
  )
  return ways as unknown as Version['ways']
}

/** Both as versions: each leaves for its finish as it was seen to. At most one stands in the way: whoever is told so first. */
export function versionsOf(
  request: Pick<BriefingRequest, 'ours'>,
  { own, best }: ByHand,
): { own: Version; computed: Version } {
  const marks = own.told.indexOf('marks')
  const ways = own.told.map((each) => (each === 'marks' ? 0 : each)) as unknown as Version['ways']
  return {
    own: { ...asSeen, ways, ...(marks >= 0 && { marks, slowed: own.marked }) },
    computed: { ...asSeen, ways: waysWith(request, best) },
  }
}

/**
 * Plays a line-up of one's own in the same matches as the briefing's best, as line-ups are compared there.
 */
export function ownBeside(
  request: BriefingRequest,
  { best, own, matches = planned }: ByHand & { matches?: number },
): OwnBeside {
  const player = new VersionPlayer(request)
  const versions = versionsOf(request, { own, best })
  const of = { from: 0, to: matches }
  const computed = player.play(versions.computed, of)
  const played = player.play(versions.own, of)
  return { win: winOf(played.margins), loses: differenceOf(computed, played), best: winOf(computed.margins) }
}
