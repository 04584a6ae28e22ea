import type { Electric } from '../inputs.ts'

/**
 * The motors, their gearbox and their source as one thing that turns an output. By the straight line of torque over speed a
 * motor is a resistance, a voltage per speed and a torque per ampere beyond the free current:
 *
 *   resistance = nominal voltage / stall current,  voltage per speed = (nominal voltage − free current · resistance) / free speed,
 *   torque per ampere = stall torque / (stall current − free current)
 *
 * Source: Hughes & Drury, Electric Motors and Drives (5th ed. 2019), chapter 3.
 */
export interface Circuit {
  /** Output torque at a standstill with full voltage (N·m), and how much of it each rad/s of the output takes. */
  standstill: number
  perSpeed: number
  /** Most torque that the current limit allows (N·m); Infinity without one. */
  limit: number
  /** Of all rotors, as the output feels it (kg·m²). */
  rotors: number
  /** Current of one motor at an output torque (A). */
  currentAt(torque: number): number
  /** Current of the source (A) and its voltage (V) while each motor has a current at an output speed. */
  sourceAt(current: number, speed: number): { current: number; voltage: number }
}

export function circuitOf(input: Electric<number>): Circuit {
  const { motor, motors, reduction, efficiency, currentLimit, voltage, sourceResistance } = input
  const resistance = motor.nominalVoltage / motor.stallCurrent
  const voltPerSpeed = (motor.nominalVoltage - motor.freeCurrent * resistance) / motor.freeSpeed
  const torquePerAmpere = motor.stallTorque / (motor.stallCurrent - motor.freeCurrent)
  const perAmpere = motors * reduction * efficiency * torquePerAmpere
  // All motors share the source: each feels its resistance as many times as there are motors.
  const loop = resistance + motors * sourceResistance
  return {
    standstill: perAmpere * (voltage / loop - motor.freeCurrent),
    perSpeed: (perAmpere * voltPerSpeed * reduction) / loop,
    limit: currentLimit === null ? Number.POSITIVE_INFINITY : perAmpere * (currentLimit - motor.freeCurrent),
    rotors: motors * (motor.rotorInertia ?? 0) * reduction ** 2,
    currentAt: (torque) => motor.freeCurrent + torque / perAmpere,
    sourceAt: (current, speed) => {
      // Below full voltage the controller trades volts for amperes: power in = power at the motors.
      const power = motors * current * (current * resistance + voltPerSpeed * speed * reduction)
      const within = Math.max(0, voltage ** 2 - 4 * sourceResistance * power)
      const atSource = (voltage + Math.sqrt(within)) / 2
      return { current: power / atSource, voltage: atSource }
    },
  }
}
