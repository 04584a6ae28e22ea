import type { TimedLeg } from '../../../../src/model/documents/timing.ts'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { placeName } from '../../../words/actions.ts'
import { words } from '../../../words/catalogue.ts'

/** A kind of trip as the strip names it; with the number of the way where there are several. */
export function legWords(game: Game, robot: Pick<Robot, 'score'>, leg: TimedLeg): string {
  const texts = words().strip.legs
  if (leg.kind === 'collect') return texts.collect(placeName(game, leg.source))
  if (leg.kind === 'finish') return texts.finish(placeName(game, leg.finish))
  const several = (robot.score[leg.goal]?.length ?? 0) > 1
  const goal = placeName(game, leg.goal)
  return texts.score(several ? words().designs.can.entry(goal, leg.entry + 1) : goal)
}

/** Kinds of trips that a robot does, in the document's order. */
export const legsOf = ({ collect, score, finish }: Robot): TimedLeg[] => [
  ...Object.keys(collect).map((source) => ({ kind: 'collect' as const, source })),
  ...Object.entries(score).flatMap(([goal, entries]) =>
    entries.map((_, entry) => ({ kind: 'score' as const, goal, entry })),
  ),
  ...Object.keys(finish).map((id) => ({ kind: 'finish' as const, finish: id })),
]
