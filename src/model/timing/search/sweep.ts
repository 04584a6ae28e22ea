import { ModelError } from '../../errors.ts'
import { longest, tooSlow } from '../answer/answer.ts'
import type { Calculator } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import { settle } from '../answer/settle.ts'
import type { ElectricQuantities } from '../answers.ts'
import { drive } from '../drive/drive.ts'
import type { DriveInput, MotorPivotInput, RollersInput, WheelInput } from '../inputs.ts'
import { pivot } from '../pivot/pivot.ts'
import { rollers } from '../rollers/rollers.ts'
import type { Remark } from '../types.ts'
import { wheel } from '../wheel/wheel.ts'

/** What can be searched: everything that motors turn through a gearbox. */
export interface Searched {
  drive: DriveInput
  rollers: RollersInput
  pivot: MotorPivotInput
  wheel: WheelInput
}

export interface Sweep<Name extends keyof Searched = keyof Searched> {
  calculator: Name
  input: Searched[Name]
  /** Reductions from low to high in equal ratios. */
  reductions: { low: number; high: number; count: number }
  /** Numbers of motors to try. */
  motors: readonly number[]
  /** What may not be exceeded: current of one motor and of the source (A); and the source's least voltage (V). */
  limits?: { motorCurrent?: number; sourceCurrent?: number; sourceVoltage?: number }
}

export interface SweepPoint {
  reduction: number
  motors: number
  /** Null where it can not be done, and why. */
  seconds: number | null
  why: Remark | null
  /** Null where it can not be done. */
  loads: ElectricQuantities | null
  /** Whether it keeps to the limits. */
  within: boolean
}

export interface SweepResult {
  /** Number of motors by number of motors, reductions rising. */
  points: SweepPoint[]
  /** The quickest within the limits; null: none. Of equally quick ones that with fewer motors. */
  best: SweepPoint | null
  /** How flat the optimum is: reductions around the best, with its number of motors, that take at most so much longer (share). */
  flat: { low: number; high: number; share: number } | null
}

const rounding = 1e-9

/** A difference of time that nobody notices on the field. */
const flatShare = 0.02

/**
 * Times of a mechanism over reductions and numbers of motors, at likely values; the best is one of the points, so that its
 * reduction is as exact as their ratio.
 */
export function sweep<Name extends keyof Searched>(request: Sweep<Name>): SweepResult {
  const { reductions, motors, limits = {} } = request
  const { likely } = settle<object>(request.input)
  const calculator = calculators[request.calculator] as unknown as Calculator<object, Partial<Loads>, unknown>
  const points = motors.flatMap((count) =>
    inRatios(reductions).map((reduction) => point(calculator, { ...likely, reduction, motors: count }, limits)),
  )
  const best = points.reduce<SweepPoint | null>(
    (least, each) => (each.within && quicker(each, least) ? each : least),
    null,
  )
  return { points, best, flat: best && flatAround(points, best) }
}

const calculators = { drive, rollers, pivot, wheel }

type Loads = { [Name in keyof ElectricQuantities]: number | null }

function inRatios({ low, high, count }: Sweep['reductions']): number[] {
  if (count < 2) return [low]
  return Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)))
}

function point(
  calculator: Calculator<object, Partial<Loads>, unknown>,
  input: { reduction: number; motors: number },
  limits: NonNullable<Sweep['limits']>,
): SweepPoint {
  const { reduction, motors } = input
  const not = (why: Remark): SweepPoint => ({ reduction, motors, seconds: null, why, loads: null, within: false })
  const solved = solvedOrNot(calculator, input)
  if (!solved.possible) return not(solved.why)
  if (solved.seconds > longest) return not(tooSlow(solved.seconds))
  const { motorCurrent, sourceCurrent, sourceVoltage } = solved.quantities as ElectricQuantities
  // A motor that is held at its limit is within it, whatever the last digit of the arithmetic says.
  const atMost = (value: number, limit = Number.POSITIVE_INFINITY) => value <= limit * (1 + rounding)
  const within =
    atMost(motorCurrent, limits.motorCurrent) &&
    atMost(sourceCurrent, limits.sourceCurrent) &&
    atMost(limits.sourceVoltage ?? 0, sourceVoltage)
  return {
    reduction,
    motors,
    seconds: solved.seconds,
    why: null,
    loads: { motorCurrent, sourceCurrent, sourceVoltage },
    within,
  }
}

/** A motion that can not be followed at one reduction leaves the others. */
function solvedOrNot(calculator: Calculator<object, Partial<Loads>, unknown>, input: object) {
  try {
    return calculator.solve(input)
  } catch (error) {
    if (error instanceof ModelError) return { possible: false, why: remark('notFollowed', error.message) } as const
    throw error
  }
}

function quicker(one: SweepPoint, other: SweepPoint | null): boolean {
  if (other === null) return true
  const [a, b] = [one.seconds!, other.seconds!]
  // Rounding must not decide for another number of motors.
  return Math.abs(a - b) <= rounding * b ? one.motors < other.motors : a < b
}

function flatAround(points: readonly SweepPoint[], best: SweepPoint): SweepResult['flat'] {
  const row = points.filter(({ motors }) => motors === best.motors)
  const close = ({ within, seconds }: SweepPoint) => within && seconds! <= best.seconds! * (1 + flatShare)
  let [first, last] = [row.indexOf(best), row.indexOf(best)]
  while (first > 0 && close(row[first - 1]!)) first--
  while (last < row.length - 1 && close(row[last + 1]!)) last++
  return { low: row[first]!.reduction, high: row[last]!.reduction, share: flatShare }
}
