import type { Option } from '../../model/documents/types.ts'

/** Every so-many-th draw is taken along. */
const stride = 2
/** Digits of a draw and of all else: errors of a thousandth lie far below what is known of any robot. */
const digits = { draws: 3, robot: 4 }

const rounded = <Of>(value: Of, to: number): Of =>
  JSON.parse(JSON.stringify(value, (_, each) => (typeof each === 'number' ? Number(each.toPrecision(to)) : each))) as Of

/** An observed robot with fewer draws and digits: about a quarter of its bytes. Draw d of all teams still belongs together. */
export function thinned(option: Option): Option {
  const { habit } = option.robot
  if (!habit?.draws) return rounded(option, digits.robot)
  const { draws, ...rest } = habit
  const every = draws.filter((_, d) => d % stride === 0)
  const robot = rounded({ ...option.robot, habit: rest }, digits.robot)
  return {
    ...rounded({ ...option, robot }, digits.robot),
    robot: { ...robot, habit: { ...rest, ...robot.habit, draws: rounded(every, digits.draws) } },
  }
}
