import { blocker, called, type fieldSentences } from '../../../src/model/field/sentences.ts'
import type { Told } from './problems.ts'

type Lengths = 'noWay' | 'wayBlocked' | 'tooNear'

/** What the field says of lengths, which come with their unit; the rest is the model's own. */
export const computing: {
  [Code in Lengths]: (of: Told<Parameters<(typeof fieldSentences)[Code]>[0]>) => string
} = {
  noWay: ({ from, to, apart }) =>
    `There is no way from ${called(from)} to ${called(to)}: no gap is wide enough for the robot, whose centre keeps ${apart} from obstacles and border.`,
  wayBlocked: ({ from, to, place, at, by, apart }) =>
    `There is no way from ${called(from)} to ${called(to)}: ${called(place)}, at ${at.join(' along and ')} across, is too near ${blocker(by)} for the robot, whose centre keeps ${apart} from it.`,
  tooNear: ({ place, by, apart }) =>
    `${called(place)} is too near ${blocker(by)}: the robot’s centre keeps ${apart} from it`,
}
