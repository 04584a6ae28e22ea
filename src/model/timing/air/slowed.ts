import { scaled } from '../../compare/inputDuration.ts'
import { type PneumaticMechanism, pneumaticMechanisms, type StoredAir } from '../../documents/air.ts'
import { hardwareLinks } from '../../documents/hardware.ts'
import type { TimedLeg } from '../../documents/timing.ts'
import type { Duration, Option, Robot, Stage } from '../../documents/types.ts'
import { mean } from '../../duration/index.ts'
import { likelyOf } from '../answer/settle.ts'
import { type MechanismAnswer, mapStages, mechanismAnswer } from '../follow.ts'
import type { Uncertain } from '../types.ts'
import { legAt } from './airOfRobot.ts'

/** A stage with the time that it has once the working pressure is lost. */
export interface SlowedStage {
  leg: TimedLeg
  stage: string
  name: string
  mechanism: string
  /** Means (s), before and after. */
  seconds: number
  slowed: number
  /**
   * calculator: the mechanism's time at the low pressure. ratio: a time of its own, longer in the same measure as the
   * mechanism's. factor: the mechanism can not be timed at that pressure, so that the document's factor is taken.
   */
  by: 'calculator' | 'ratio' | 'factor'
}

/**
 * The option with the times that its stages have once the working pressure is lost, and how each came about. Stages that
 * name no pneumatic mechanism, trips told as a whole and repeated tries keep theirs.
 */
export function slowedByAir(option: Option, air: StoredAir): { option: Option; stages: SlowedStage[] } {
  const { robot } = option
  const mechanisms = new Map(pneumaticMechanisms(robot).map((mechanism) => [mechanism.id, mechanism]))
  const slow = new Map<Stage, Duration>()
  const stages = hardwareLinks(robot).flatMap(({ stage, link, path }): SlowedStage[] => {
    const mechanism = mechanisms.get(link.mechanism)
    if (!mechanism) return []
    const { duration, by } = slowedDuration(stage, { mechanism, air, follows: link.follows })
    slow.set(stage, duration)
    return [
      {
        leg: legAt(path),
        stage: stage.id,
        name: stage.name,
        mechanism: mechanism.id,
        seconds: mean(stage.duration),
        slowed: mean(duration),
        by,
      },
    ]
  })
  const slower: Robot = mapStages(robot, (stage) => {
    const duration = slow.get(stage)
    return duration ? { ...stage, duration } : stage
  })
  return { option: { ...option, robot: slower }, stages }
}

function slowedDuration(
  { duration }: Stage,
  of: { mechanism: PneumaticMechanism; air: StoredAir; follows: boolean },
): { duration: Duration; by: SlowedStage['by'] } {
  const low = timed(mechanismAnswer(atPressure(of.mechanism, of.air.low)))
  if (low && of.follows) return { duration: low.duration, by: 'calculator' }
  const own = timed(mechanismAnswer(of.mechanism))
  if (low && own && own.seconds > 0)
    return { duration: scaled(duration, low.seconds / own.seconds) as Duration, by: 'ratio' }
  return { duration: scaled(duration, of.air.slower) as Duration, by: 'factor' }
}

function timed(answer: MechanismAnswer): { seconds: number; duration: Duration } | null {
  return answer.possible && answer.seconds !== null && answer.duration ? (answer as ReturnType<typeof timed>) : null
}

const lowered = new WeakMap<object, Map<number, PneumaticMechanism>>()

/**
 * The mechanism with no more than a pressure before its valves (Pa); its own spread of pressure is dropped. Kept, so that its
 * answer is.
 */
export function atPressure(mechanism: PneumaticMechanism, low: number): PneumaticMechanism {
  const own: Uncertain = (mechanism.input as { pressure: Uncertain }).pressure
  if ((typeof own === 'number' ? own : likelyOf(own)) <= low) return mechanism
  const known = lowered.get(mechanism.input) ?? new Map<number, PneumaticMechanism>()
  lowered.set(mechanism.input, known)
  const found = known.get(low) ?? ({ ...mechanism, input: { ...mechanism.input, pressure: low } } as PneumaticMechanism)
  if (known.size > 8) known.clear()
  known.set(low, found)
  return found
}
