import type { Calculator, Solved } from '../answer/calculator.ts'
import { electricUnits } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { DriveQuantities, MotionCurves } from '../answers.ts'
import { electricWarnings, loadsOf } from '../electric/loads.ts'
import type { DriveInput } from '../inputs.ts'
import { drawnPoints, evenly } from '../numerics/trace.ts'
import type { Remark } from '../types.ts'
import { type Chassis, chassisOf } from './chassis.ts'
import { trapezoidOf } from './trapezoid.ts'
import { type Way, wayOf } from './way.ts'

type Input = DriveInput<number>

/**
 * A drive: acceleration limited by traction, current and back-EMF, braking by the tyres or by a limit, over a distance. In
 * closed form.
 */
export const drive: Calculator<Input, DriveQuantities, MotionCurves> = {
  units: {
    ...electricUnits,
    wheelDiameter: 'm',
    mass: 'kg',
    friction: '',
    drivenShare: '',
    rollingResistance: 'N',
    brakingLimit: 'm/s²',
    distance: 'm',
  },
  seconds: (input) => {
    const chassis = chassisOf(input)
    return chassis.stuck ? null : wayOf(chassis, input).seconds
  },
  solve: (input): Solved<DriveQuantities, MotionCurves> => {
    const chassis = chassisOf(input)
    const { tractionForce, launchForce, deceleration, limitedBy } = chassis
    if (chassis.stuck) {
      return {
        possible: false,
        why: chassis.stuck,
        quantities: { tractionForce, launchForce, deceleration },
        warnings: [],
      }
    }
    const way = wayOf(chassis, input)
    const { peakSpeed, runningSeconds } = way
    const { motion, circuit, radius } = chassis
    const moments = [0, Math.min(motion.knee, peakSpeed), peakSpeed].map((speed) => ({
      torque: motion.forceAt(speed) * radius,
      speed: speed / radius,
    }))
    const loads = loadsOf(circuit, moments)
    return {
      possible: true,
      seconds: way.seconds,
      quantities: {
        ...loads,
        topSpeed: motion.top,
        peakSpeed,
        acceleration: chassis.acceleration,
        limitedBy,
        kneeSpeed: motion.knee,
        deceleration,
        tractionForce,
        launchForce,
        runningSeconds,
        brakingSeconds: way.seconds - runningSeconds,
        trapezoid: input.legs ? trapezoidOf(chassis, input.legs) : null,
      },
      curves: curvesOf(chassis, way),
      warnings: [...electricWarnings(input, loads), ...warningsOf(chassis, way)],
    }
  },
}

function curvesOf({ motion, circuit, radius }: Chassis, way: Way): MotionCurves {
  const time = evenly(0, way.seconds, drawnPoints)
  const points = time.map((seconds) => way.at(seconds))
  return {
    time,
    speed: points.map(({ speed }) => speed),
    distance: points.map(({ distance }) => distance),
    // While it brakes the motors are taken to be off: what they give back depends on the controller.
    current: points.map(({ speed, braking }) => (braking ? 0 : circuit.currentAt(motion.forceAt(speed) * radius))),
  }
}

function warningsOf({ motion, limitedBy }: Chassis, { peakSpeed }: Way): Remark[] {
  const warnings: Remark[] = []
  if (limitedBy === 'traction') {
    warnings.push(remark('wheelsSlip', 'At full power the wheels would slip up to {speed} m/s', { speed: motion.knee }))
  }
  if (peakSpeed < 0.7 * motion.top) {
    const text = 'It gets to {peak} m/s of {top} m/s: over this distance a greater reduction may be quicker'
    warnings.push(remark('topSpeedUnused', text, { peak: peakSpeed, top: motion.top }))
  }
  return warnings
}
