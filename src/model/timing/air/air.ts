import type { Calculator, Solved } from '../answer/calculator.ts'
import { remark } from '../answer/remark.ts'
import type { AirCurves, AirQuantities } from '../answers.ts'
import type { AirInput } from '../inputs.ts'
import type { Remark } from '../types.ts'
import { demandOf } from './demand.ts'
import { type Course, course } from './match.ts'
import { fillSeconds, type Supply } from './refill.ts'

type Input = AirInput<number>

/** Draws of which both pressures are drawn, at most. */
const drawnCycles = 200

/**
 * Stored air over a match of equal cycles. Its time is what the compressor needs for one cycle's air above the working pressure:
 * the shortest cycle once the store is used up. Without a compressor, or with one that is too weak, there is none.
 */
export const air: Calculator<Input, AirQuantities, AirCurves> = {
  units: { working: 'Pa', ambient: 'Pa', leak: 'm³/s' },
  seconds: sustained,
  solve: (input): Solved<AirQuantities, AirCurves> => {
    const { volume, freeAir } = demandOf(input)
    const supply = supplyOf(input)
    const pressureDrop = (input.working * volume) / supply.volume
    const cyclesInMatch = Math.floor(input.matchSeconds / input.cycleSeconds + 1e-9)
    const sustainedSeconds = sustained(input)
    const known = { freeAir, pressureDrop, cyclesInMatch, sustainedSeconds }
    const done = course(supply, { ...input, until: input.matchSeconds }, cyclesOf(input, volume, cyclesInMatch))
    const why = whyNot(input) ?? (done.lost === 0 ? notOneCycle(input, done) : null)
    if (why) return { possible: false, why, quantities: known, warnings: [] }
    const timeOf = (lost: number | null) => (lost === null ? null : done.draws[lost]!.at)
    const quantities: AirQuantities = {
      ...known,
      cycles: done.lost ?? cyclesInMatch,
      cyclesAdiabatic: done.lostAdiabatic ?? cyclesInMatch,
      lostAt: timeOf(done.lost),
      lostAtAdiabatic: timeOf(done.lostAdiabatic),
      endPressure: done.endPressure,
      compressorDuty: input.compressor ? done.ran / input.matchSeconds : null,
    }
    // A time that does not exist is 0 here and null in the answer.
    return {
      possible: true,
      seconds: sustainedSeconds ?? 0,
      quantities,
      curves: curvesOf(input, done),
      warnings: warningsOf(input, quantities),
    }
  },
}

export const supplyOf = ({ tank, tanks, compressor, leak, ambient }: Input): Supply => ({
  volume: tank.volume * tanks,
  compressor,
  leak,
  ambient,
})

/** Strokes stand at each cycle's end. */
const cyclesOf = ({ cycleSeconds }: Input, volume: number, count: number) =>
  Array.from({ length: count }, (_, i) => ({ at: (i + 1) * cycleSeconds, volume }))

/**
 * Seconds in which the compressor lifts the tanks from the working pressure by what one cycle takes; null where there is none,
 * or it never gets there.
 */
function sustained(input: Input): number | null {
  const supply = supplyOf(input)
  const drop = (input.working * demandOf(input).volume) / supply.volume
  return fillSeconds(supply, input.working, input.working + drop)
}

/** What forbids to store air so, or makes it useless. */
export function whyNot({
  stored,
  working,
  ambient,
  tank,
}: Pick<Input, 'stored' | 'working' | 'ambient' | 'tank'>): Remark | null {
  if (stored > tank.highestPressure) {
    const text = 'The tank may hold {most} Pa and would be filled to {stored} Pa: it can burst'
    return remark('tankOverPressure', text, { most: tank.highestPressure, stored })
  }
  if (working <= ambient) {
    const text = 'The working pressure of {working} Pa is no more than the room’s {ambient} Pa: nothing pushes'
    return remark('noPressure', text, { working, ambient })
  }
  if (stored >= working) return null
  return remark('storedTooLow', 'The store begins with {stored} Pa, less than the {working} Pa it works with', {
    stored,
    working,
  })
}

function notOneCycle({ working }: Input, { draws }: Course): Remark {
  const text = 'The store does not last for one cycle: after it {after} Pa are left of the {working} Pa that are needed'
  return remark('notOneCycle', text, { after: draws[0]!.after, working })
}

function curvesOf({ stored, matchSeconds }: Input, { draws, endPressure, endAdiabatic }: Course): AirCurves {
  const step = Math.max(1, Math.ceil(draws.length / drawnCycles))
  const some = draws.filter((_, i) => i % step === 0)
  return {
    time: [0, ...some.flatMap(({ at }) => [at, at]), matchSeconds],
    pressure: [stored, ...some.flatMap(({ before, after }) => [before, after]), endPressure],
    pressureAdiabatic: [stored, ...some.flatMap((each) => [each.beforeAdiabatic, each.afterAdiabatic]), endAdiabatic],
  }
}

function warningsOf(input: Input, quantities: AirQuantities): Remark[] {
  const { cycles, lostAt, lostAtAdiabatic, cyclesAdiabatic, sustainedSeconds } = quantities
  const warnings: Remark[] = []
  if (lostAt !== null) {
    const text = 'The air runs out in cycle {cycle}, {seconds} s into the match'
    warnings.push(remark('airRunsOut', text, { cycle: cycles + 1, seconds: lostAt }))
  } else if (lostAtAdiabatic !== null) {
    const text = 'If the tank stays cold, the air runs out in cycle {cycle}, {seconds} s into the match'
    warnings.push(remark('airRunsOutCold', text, { cycle: cyclesAdiabatic + 1, seconds: lostAtAdiabatic }))
  }
  if (input.compressor && sustainedSeconds === null) {
    warnings.push(
      remark(
        'compressorTooWeak',
        'The compressor never brings back what a cycle takes: it ends or gives out below that pressure, leaks taken off',
      ),
    )
  }
  return [...warnings, ...compressorWarnings(input)]
}

/** What is wrong with when the compressor works. */
export function compressorWarnings({
  compressor,
  working,
  tank,
}: Pick<Input, 'compressor' | 'working' | 'tank'>): Remark[] {
  if (!compressor) return []
  const { on, off, part } = compressor
  const warnings: Remark[] = []
  if (on < working) {
    const text = 'The compressor starts at {on} Pa only, below the working pressure of {working} Pa'
    warnings.push(remark('compressorStartsLate', text, { on, working }))
  }
  if (off > part.flow.at(-1)![0]) {
    const text = 'The compressor is to end at {off} Pa and gets to {most} Pa: it never ends'
    warnings.push(remark('compressorNeverEnds', text, { off, most: part.flow.at(-1)![0] }))
  }
  if (off > tank.highestPressure) {
    const text = 'The compressor is to end at {off} Pa and the tank may hold {most} Pa: it can burst'
    warnings.push(remark('compressorOverPressure', text, { off, most: tank.highestPressure }))
  }
  return warnings
}
