import type { Input } from '../../../src/model/compare/types.ts'
import { hardwareLinks } from '../../../src/model/documents/hardware.ts'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Option } from '../../../src/model/documents/types.ts'
import { type MechanismAnswer, mechanismAnswer } from '../../../src/model/timing/index.ts'
import { words } from '../../words/catalogue.ts'

const answers = new Map<string, MechanismAnswer>()
/** So many answers are kept; a comparison has some ten mechanisms. */
const most = 200

/** A mechanism's answer takes up to a tenth of a second: it is computed once. */
function answerOf(mechanism: Mechanism): MechanismAnswer {
  const key = JSON.stringify(mechanism)
  const answer = answers.get(key) ?? mechanismAnswer(mechanism)
  if (answers.size >= most) answers.clear()
  answers.set(key, answer)
  return answer
}

/** What is still to be computed before the unknowns of these options can be told, mechanism by mechanism. */
export const stillToAnswer = (options: readonly Option[]): (() => void)[] =>
  options.flatMap(({ robot }) =>
    (robot.mechanisms ?? [])
      .filter((mechanism) => !answers.has(JSON.stringify(mechanism)))
      .map((mechanism) => () => void answerOf(mechanism)),
  )

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
    const answer = answerOf(mechanism)
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
