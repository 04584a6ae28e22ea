import { circuitOf } from '../../../../src/model/timing/electric/circuit.ts'
import type { Electric } from '../../../../src/model/timing/index.ts'
import { current, pressure, rotation, voltage } from '../../../units/measures.ts'
import { type Measured, unitOf } from '../../../units/quantities.ts'
import { unitsShown } from '../../../units/system.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import { lengthMeasure, sayAngle, threeDigits } from '../say.ts'
import type { Shown } from '../useShown.ts'
import type { CurvePanel, Limit, Line } from './panel.ts'

interface Parts {
  lines: Line[]
  limits?: (Limit | null)[]
}

function panel(id: string, name: string, quantity: Measured, { lines, limits = [] }: Parts): CurvePanel {
  const system = unitsShown()
  const { symbol, factor } = unitOf(quantity, system)
  return {
    id,
    name,
    unit: symbol,
    factor,
    lines,
    limits: limits.filter((limit) => limit !== null),
    say: (value) => sayQuantity(value, quantity, system, threeDigits(value / factor)),
  }
}

const line = (id: string, name: string, values: readonly number[]): Line => ({ id, name, values })

/** A limit in words that end with its value; null where there is none. */
function limit(
  id: string,
  value: number | null | undefined,
  text: (said: string) => string,
  say: (value: number) => string,
) {
  return typeof value === 'number' ? { id, value, text: text(say(value)) } : null
}

const degree = Math.PI / 180

function anglePanel(id: string, name: string, values: readonly number[], limits: (Limit | null)[] = []): CurvePanel {
  const speed = id === 'speed'
  return {
    id,
    name,
    unit: speed ? '°/s' : '°',
    factor: degree,
    lines: [line(id, name, values)],
    limits: limits.filter((each) => each !== null),
    say: (value) => (speed ? `${plain(value / degree, 0)}\u00a0°/s` : sayAngle(value)),
  }
}

const distances = (values: readonly number[], end: number): CurvePanel => {
  const { names, curves } = words().timingCharts
  const quantity = lengthMeasure(end)
  const made = panel('distance', names.distance, quantity, { lines: [line('distance', names.distance, values)] })
  return { ...made, limits: [{ id: 'end', value: end, text: curves.end(made.say(end)) }] }
}

function currents(values: readonly number[], { currentLimit }: Electric<number>): CurvePanel {
  const { names, curves } = words().timingCharts
  const made = panel('current', names.current, current, { lines: [line('current', names.current, values)] })
  const bound = limit('limit', currentLimit, curves.limit, made.say)
  return { ...made, limits: bound ? [bound] : [], holds: [0] }
}

/**
 * What is left of the source's voltage while the motors have a current: power in is power at the motors, as in the answer's own
 * lowest voltage. `speeds` are the output's (rad/s). What braking gives back is left out: it depends on the controller.
 */
function voltages(currents: readonly number[], speeds: readonly number[], input: Electric<number>): CurvePanel {
  const { names, curves } = words().timingCharts
  const circuit = circuitOf(input)
  const values = currents.map((each, i) => circuit.sourceAt(Math.max(0, each), Math.abs(speeds[i]!)).voltage)
  const made = panel('voltage', names.voltage, voltage, { lines: [line('voltage', names.voltage, values)] })
  const bound = limit('lowest', input.lowestVoltage, curves.lowest, made.say)
  return { ...made, limits: bound ? [bound] : [], holds: [input.lowestVoltage ?? 0, input.voltage] }
}

function pressures(
  curves: { pressure: readonly number[]; backPressure: readonly number[] },
  { pressure: working, ambient }: { pressure: number; ambient: number },
): CurvePanel {
  const text = words().timingCharts
  const made = panel('pressure', text.names.pressures, pressure, {
    lines: [
      line('pressure', text.names.pressure, curves.pressure),
      line('backPressure', text.names.backPressure, curves.backPressure),
    ],
  })
  return {
    ...made,
    limits: [
      { id: 'working', value: working, text: text.curves.working(made.say(working)) },
      { id: 'room', value: ambient, text: text.curves.room(made.say(ambient)) },
    ],
  }
}

function speeds(values: readonly number[], bound: { value: number | undefined; text(said: string): string } | null) {
  const { names } = words().timingCharts
  const made = panel('speed', names.speed, 'speed', { lines: [line('speed', names.speed, values)] })
  const top = bound && limit('top', bound.value, bound.text, made.say)
  return { ...made, limits: top ? [top] : [] }
}

/** The small pictures of a calculator's curves over its time; a flight is drawn over its distance instead. */
export function panelsOf(shown: Shown): CurvePanel[] {
  const { names, curves: text } = words().timingCharts
  if (!shown.curves) return []
  switch (shown.calculator) {
    case 'drive': {
      const { input, curves, quantities } = shown
      const turning = curves.speed.map((each) => (2 * each) / input.wheelDiameter)
      return [
        speeds(curves.speed, { value: quantities.topSpeed, text: text.top }),
        distances(curves.distance, input.distance),
        currents(curves.current, input),
        voltages(curves.current, turning, input),
      ]
    }
    case 'rollers': {
      const { input, curves, quantities } = shown
      const turning = curves.speed.map((each) => (2 * each) / (1 - input.slip) / input.rollerDiameter)
      return [
        speeds(curves.speed, { value: quantities.surfaceSpeed, text: text.surface }),
        distances(curves.distance, input.travel),
        currents(curves.current, input),
        voltages(curves.current, turning, input),
      ]
    }
    case 'pivot': {
      const { input, curves } = shown
      const turned = [
        anglePanel('angle', names.angle, curves.angle, [
          limit('end', input.to, text.end, sayAngle),
          limit('low', input.stops?.low, text.lowStop, sayAngle),
          limit('high', input.stops?.high, text.highStop, sayAngle),
        ]),
        anglePanel('speed', names.speed, curves.speed),
      ]
      return input.by === 'motor'
        ? [...turned, currents(curves.current, input), voltages(curves.current, curves.speed, input)]
        : [...turned, pressures(curves, input)]
    }
    case 'wheel': {
      const { input, curves } = shown
      const made = panel('speed', names.speed, rotation, { lines: [line('speed', names.speed, curves.speed)] })
      return [
        { ...made, limits: [{ id: 'target', value: input.target, text: text.target(made.say(input.target)) }] },
        currents(curves.current, input),
        voltages(curves.current, curves.speed, input),
      ]
    }
    case 'cylinder': {
      const { input, curves, quantities } = shown
      return [
        distances(curves.distance, quantities.travel ?? input.cylinder.stroke),
        speeds(curves.speed, null),
        pressures(curves, input),
      ]
    }
    case 'shot':
      return [flightPanel(shown)]
  }
}

function flightPanel({ input, curves }: Extract<Shown, { calculator: 'shot' }>): CurvePanel {
  const { names, curves: text } = words().timingCharts
  const { opening, targetHeight } = input
  const made = panel('height', names.height, 'length', { lines: [line('height', names.height, curves!.height)] })
  // An upright opening is a range of heights; a level ring is met at one.
  const half = opening?.lies === 'upright' ? opening.size / 2 : 0
  const rims =
    half > 0
      ? [-half, half].map((off) => ({
          id: `rim${off}`,
          value: targetHeight + off,
          text: `${text.opening} ${made.say(targetHeight + off)}`,
        }))
      : [{ id: 'middle', value: targetHeight, text: `${text.middle} ${made.say(targetHeight)}` }]
  const under = curves!.height.some((each) => each < 0)
  return { ...made, limits: under ? [...rims, { id: 'floor', value: 0, text: text.floor }] : rims }
}
