import type { Input } from '../../../src/model/compare/types.ts'
import { hardwareLinks } from '../../../src/model/documents/hardware.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { mechanismAnswer } from '../../../src/model/timing/index.ts'
import { words } from '../../words/catalogue.ts'

const rounded = (value: number): number => Number(value.toPrecision(3))

/**
 * What hardware leaves unknown about an option's times, as one unknown per mechanism: the belief that its inputs of unknown
 * level give, as a factor on all stages that follow it, or on the drive's pace.
 * @param index of the option in the comparison
 */
export function hardwareUnknowns({ robot }: Option, index: number): Input[] {
  const links = hardwareLinks(robot).filter(({ link }) => link.follows)
  const drive = robot.drive.hardware?.follows ? robot.drive.hardware.mechanism : null
  return (robot.mechanisms ?? []).flatMap((mechanism): Input[] => {
    const paths = [
      ...links.filter(({ link }) => link.mechanism === mechanism.id).map(({ path }) => [...path, 'duration'].join('/')),
      // Its times are those of the drive's three numbers; a factor on the pace is one on all of them.
      ...(drive === mechanism.id ? ['drive/pace'] : []),
    ]
    const answer = mechanismAnswer(mechanism)
    if (paths.length === 0 || !answer.possible || answer.belief === null || answer.seconds <= 0) return []
    const { low, high } = answer.belief
    const of = (seconds: number) => rounded(seconds / answer.seconds)
    return [
      {
        id: words().tradeoffs.unknowns.hardware(robot.name, mechanism.name),
        paths: paths.map((path) => `/options/${index}/robot/${path}`),
        as: 'factor',
        low: Math.min(1, of(low)),
        likely: 1,
        high: Math.max(1, of(high)),
      },
    ]
  })
}
