import * as z from 'zod'
import type { AirAnswer } from '../../../model/timing/answers.ts'
import type { AirInput } from '../../../model/timing/inputs.ts'
import { disagree } from '../agree.ts'
import { count, list, measure } from '../primitives.ts'
import { answerOrNull, curve, number, seconds } from './answer.ts'
import { compressor, cylinder, highestPressure, tank } from './parts.ts'
import { ambient } from './supply.ts'
import { uncertain } from './uncertain.ts'

const perCycle = (what: string) => measure(0, 100, `Strokes ${what} per cycle`)
const pressure = (what: string) => measure(50_000, highestPressure, `${what} (Pa, absolute)`)

const strokes = z.strictObject({
  cylinder,
  stop: measure(0.001, 3, 'Travel at which a hard stop ends the movement (m); null: the full stroke').nullable(),
  deadVolume: measure(0, 0.01, 'On either side of the piston, tube included (m³)'),
  out: perCycle('out'),
  back: perCycle('back'),
})

export const airRequest = z
  .strictObject({
    tank,
    tanks: count(1, 50, 'Tanks of this kind'),
    stored: uncertain(50_000, highestPressure, 'At the match’s start (Pa, absolute)'),
    working: uncertain(50_000, highestPressure, 'Regulated; below it strokes are slow and weak (Pa, absolute)'),
    ambient,
    strokes: list(strokes, 1, 20, 'What moves in a cycle'),
    leak: uncertain(0, 0.01, 'Free air at the room’s pressure that is lost (m³/s)'),
    compressor: z
      .strictObject({ part: compressor, on: pressure('Starts at or below'), off: pressure('Ends at') })
      .superRefine(({ on, off }, context) => {
        if (on <= off) return
        disagree(context, ['on'], { code: 'onAboveOff', parts: { bound: off, got: on } })
      })
      .nullable(),
    cycleSeconds: uncertain(0.1, 600, 'From cycle to cycle (s)'),
    matchSeconds: uncertain(1, 1200, 'How long it has to last (s)'),
  })
  .meta({ id: 'AirTiming', description: 'Stored air over a match' })
airRequest satisfies z.ZodType<AirInput>

export const airAnswer = answerOrNull(
  {
    id: 'AirTimingAnswer',
    quantities: {
      freeAir: number('One cycle, at the room’s pressure (m³)'),
      pressureDrop: number('Of the tanks in one cycle (Pa)'),
      cyclesInMatch: number('That the match has'),
      cycles: number('That are done before the working pressure is lost'),
      cyclesAdiabatic: number('The same where the air in the tank cools: the cautious bound'),
      lostAt: seconds.nullable().describe('When the working pressure is lost, from the match’s start (s); null: never'),
      lostAtAdiabatic: seconds.nullable().describe('The same by the cautious bound (s)'),
      endPressure: number('At the match’s end (Pa, absolute)'),
      sustainedSeconds: seconds
        .nullable()
        .describe('Shortest time between cycles that the compressor sustains (s); null where it can not'),
      compressorDuty: number('Share of the match in which the compressor runs; null without one').nullable(),
    },
    curves: {
      time: curve('s'),
      pressure: curve('Of the tanks (Pa, absolute)'),
      pressureAdiabatic: curve('The cautious bound (Pa, absolute)'),
    },
  },
  'What the compressor needs for one cycle’s air above the working pressure (s); null where it can not bring it',
)
airAnswer satisfies z.ZodType<AirAnswer>
