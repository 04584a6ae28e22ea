import { describe, expect, test } from 'vitest'
import type { CalculatorName, Inputs } from '../../../src/model/timing/index.ts'
import { codes, done } from './ask.ts'
import { airInput, cylinderInput, driveInput, motorPivotInput, rollersInput, shotInput, wheelInput } from './inputs.ts'

const drive = { ...driveInput, efficiency: 0.85, voltage: 12.4, friction: 1 }
const cylinder = { ...cylinderInput, load: 60, cylinderFriction: 20 }
/** In some of its draws less than what holds the piece back. */
const doubtfulGrip = { kind: 'range' as const, low: 0.5, likely: 3, high: 6, of: 'level' as const }

describe('A mechanism that works is warned of:', () => {
  test.each([
    ['a current limit that holds it back', 'drive', drive, 'currentLimited'],
    [
      'no limit where the motors begin at their stall current',
      'wheel',
      { ...wheelInput, currentLimit: null, sourceResistance: 0 },
      'nearStall',
    ],
    ['a top speed that the distance leaves no room for', 'drive', { ...drive, distance: 0.5 }, 'topSpeedUnused'],
    [
      'rollers that perhaps do not hold the piece',
      'rollers',
      { ...rollersInput, drag: 2, grip: doubtfulGrip },
      'perhapsImpossible',
    ],
    [
      'an arm that arrives with speed and no stop',
      'pivot',
      { ...motorPivotInput, end: 'run', stops: null },
      'runsPast',
    ],
    [
      'a shot that takes a good part of the wheel’s speed',
      'wheel',
      { ...wheelInput, stage: 'recovery', shot: { pieceMass: 0.6, exitSpeed: 13, transfer: 0.5 } },
      'losesMuchSpeed',
    ],
    [
      'a target next to the highest speed',
      'wheel',
      { ...wheelInput, target: 590, drag: 0.001, inertia: 0.0025 },
      'nearFreeSpeed',
    ],
    ['a piece as large as the opening', 'shot', { ...shotInput, distance: 3, pieceDiameter: 0.6 }, 'doesNotFit'],
    [
      'errors with which it falls short',
      'shot',
      { ...shotInput, distance: 3, speedError: 0.4, opening: { size: 0.6, lies: 'level' } },
      'errorFallsShort',
    ],
    ['a cylinder that arrives hard', 'cylinder', { ...cylinder, mass: 1, load: 0 }, 'arrivesHard'],
    [
      'a cylinder that waits for its pressure',
      'cylinder',
      { ...cylinder, load: 110, deadVolume: 0.001 },
      'waitsForPressure',
    ],
    ['a stop beyond the stroke', 'cylinder', { ...cylinder, stop: 2 }, 'stopUnused'],
    [
      'a compressor that can not bring back what leaks',
      'air',
      { ...airInput, leak: 0.001, tanks: 20 },
      'compressorTooWeak',
    ],
  ] as [string, CalculatorName, Inputs[CalculatorName], string][])('%s', (_, name, input, code) => {
    const told = done(name, input)
    expect(codes(told)).toContain(code)
    const { message } = told.warnings.find((warning) => warning.code === code)!
    expect(message).not.toMatch(/NaN|Infinity|undefined|\{/)
  })

  test('air that runs out in cycle 9: eight cycles and a half are stored, by the mass balance', () => {
    const exact = { ...airInput, leak: 0, compressor: null, tanks: 9, working: 501_325 }
    // A cycle takes the same mass from the tanks whatever their pressure.
    const { pressureDrop } = done('air', exact).quantities
    const told = done('air', { ...exact, stored: exact.working + 8.5 * pressureDrop })
    const { message } = told.warnings.find(({ code }) => code === 'airRunsOut')!
    expect(message).toBe('The air runs out in cycle 9, 108 s into the match')
    // A tank that stays cold loses 1.4 times as much a cycle: six of them, and the seventh falls short.
    const cold = done('air', { ...exact, matchSeconds: 100, stored: exact.working + 8.5 * pressureDrop })
    expect(cold.warnings.map(({ message: text }) => text)).toEqual([
      'If the tank stays cold, the air runs out in cycle 7, 84 s into the match',
    ])
  })
})
