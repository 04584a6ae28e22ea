import { type Calculator, pneumaticUnits, type Solved } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { CylinderCurves, CylinderQuantities } from '../answers.ts'
import type { CylinderInput } from '../inputs.ts'
import { drawnPoints } from '../numerics/trace.ts'
import { isChoked, reference } from '../pneumatic/flow.ts'
import { areasOf, freeAirOf } from '../pneumatic/gas.ts'
import { drawn, fullForce, type Load, rate, type Stroke, stroke } from '../pneumatic/stroke.ts'
import type { Remark } from '../types.ts'

type Input = CylinderInput<number>

/** Error allowed per step: of the answer, and where only differences are asked for. */
const fine = 1e-8
const quick = 1e-4

/** A stroke of cylinders against a load, up to the end or a hard stop that shortens it: its time and its air. */
export const cylinder: Calculator<Input, CylinderQuantities, CylinderCurves> = {
  units: { ...pneumaticUnits, 'cylinder.stroke': 'm', mass: 'kg', load: 'N', stop: 'm' },
  seconds: (input) => (whyNot(input) ? null : (stroke(input, loadOf(input), quick)?.seconds ?? null)),
  solve: (input): Solved<CylinderQuantities, CylinderCurves> => {
    const known = knownOf(input)
    const why = whyNot(input)
    if (why) return { possible: false, why, quantities: known, warnings: [] }
    const done = stroke(input, loadOf(input), fine, true)
    if (!done) return { possible: false, why: remark('neverArrives', stays), quantities: known, warnings: [] }
    const points = drawn(done, drawnPoints)
    const middle = points.coordinate.findIndex((each) => each >= known.travel / 2)
    const [pushing, resisting] = [points.push[middle]!, points.back[middle]!]
    const endSpeed = done.state[rate]!
    const quantities: CylinderQuantities = {
      ...known,
      endSpeed,
      endEnergy: (input.mass * endSpeed ** 2) / 2,
      peakSpeed: done.peak,
      startsAt: done.startsAt,
      supplyChoked: isChoked(input.supply, { upstream: input.pressure, downstream: pushing }),
      exhaustChoked: isChoked(input.exhaust, { upstream: resisting, downstream: input.ambient }),
    }
    return {
      possible: true,
      seconds: done.seconds,
      quantities,
      curves: {
        time: points.time,
        distance: points.coordinate,
        speed: points.rate,
        pressure: points.push,
        backPressure: points.back,
      },
      warnings: warningsOf(input, quantities, done),
    }
  },
}

const stays = 'The piston stays where it is: with these pressures and flows it does not arrive within the longest time'

export const travelOf = (input: { cylinder: { stroke: number }; stop: number | null }): number =>
  Math.min(input.cylinder.stroke, input.stop ?? Number.POSITIVE_INFINITY)

function loadOf(input: Input): Load {
  const place = { travel: 0, slope: 1, resistance: input.load }
  return {
    direction: input.direction,
    end: travelOf(input),
    inertia: input.mass,
    at: (coordinate) => {
      place.travel = coordinate
      return place
    },
    before: 0,
  }
}

function whyNot(input: Input): Remark | null {
  if (input.pressure <= input.ambient) {
    const text = 'The air has {pressure} Pa, no more than the room with {ambient} Pa: nothing pushes'
    return remark('noPressure', text, { pressure: input.pressure, ambient: input.ambient })
  }
  const force = fullForce(input, input.direction)
  if (force > input.load) return null
  const text = 'The cylinders push with {force} N after friction, which does not overcome the load of {load} N'
  return remark('tooWeakToPush', text, { force, load: input.load })
}

function knownOf(input: Input) {
  const { cylinder, cylinders, ambient, pressure, deadVolume, exhaust, temperature, direction, cylinderFriction } =
    input
  const { full, ring } = areasOf(cylinder)
  const [pushed, resisting] = direction === 'extend' ? [full, ring] : [ring, full]
  const travel = travelOf(input)
  const filled = freeAirOf(pushed * travel, { pressure, ambient }) + (deadVolume * (pressure - ambient)) / ambient
  return {
    force: fullForce(input, direction) + cylinders * cylinderFriction,
    travel,
    freeAir: cylinders * filled,
    // Choked exhaust takes away volume at a rate that does not hang on the pressure: C · p₀ · √(T/T₀) / area.
    flowSpeed: (exhaust.conductance * reference.pressure * Math.sqrt(temperature / reference.temperature)) / resisting,
  }
}

function warningsOf(input: Input, { endSpeed, endEnergy, travel }: CylinderQuantities, done: Stroke): Remark[] {
  const warnings: Remark[] = []
  if (endSpeed > 0.5) {
    const text = 'It arrives with {speed} m/s and {energy} J: without cushioning that is hard on cylinder and stop'
    warnings.push(remark('arrivesHard', text, { speed: endSpeed, energy: endEnergy }))
  }
  if (done.startsAt > 0.5 * done.seconds) {
    const text = 'It waits {share} % of the time for pressure before it moves'
    warnings.push(remark('waitsForPressure', text, { share: (100 * done.startsAt) / done.seconds }))
  }
  if (input.stop !== null && input.stop >= input.cylinder.stroke) {
    warnings.push(remark('stopUnused', 'The hard stop lies beyond the stroke of {travel} m', { travel }))
  }
  return warnings
}
