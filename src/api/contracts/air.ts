import * as z from 'zod'
import type { AirOfTrip, AirUse, StoredAir } from '../../model/documents/air.ts'
import { airFaults } from '../../model/timing/air/airFaults.ts'
import { disagree } from './agree.ts'
import { count, id, list, measure } from './primitives.ts'
import { timedLeg } from './timing.ts'
import { compressor, highestPressure, tank } from './timings/parts.ts'

const pressure = (what: string) => measure(50_000, highestPressure, `${what} (Pa, absolute)`)
const strokes = (what: string) => measure(0, 100, `Strokes of the rod ${what}; shares count`)

const use = {
  mechanism: id.describe('Id of a mechanism of the robot that cylinders move'),
  out: strokes('out'),
  back: strokes('back'),
}
const airUse = z.strictObject(use)
airUse satisfies z.ZodType<AirUse>
const airOfTrip = z.strictObject({ leg: timedLeg, ...use })
airOfTrip satisfies z.ZodType<AirOfTrip>

export const storedAir = z
  .strictObject({
    tank,
    tanks: count(1, 50, 'Tanks of this kind'),
    stored: pressure('At the match’s start'),
    working: pressure('Behind the regulator'),
    ambient: measure(50_000, 110_000, 'Of the room (Pa, absolute)'),
    leak: measure(0, 0.01, 'Free air at the room’s pressure that is lost (m³/s)'),
    compressor: z
      .strictObject({ part: compressor, on: pressure('Starts at or below'), off: pressure('Ends at') })
      .nullable(),
    trips: list(airOfTrip, 0, 60, 'What moves in each trip of one kind'),
    autonomous: list(airUse, 0, 20, 'What moves in the whole of autonomous'),
    low: pressure('Strokes are timed with it once the working pressure is lost'),
    slower: measure(1, 20, 'Factor on a stage whose mechanism can not be timed at that pressure'),
  })
  .superRefine((air, context) => {
    for (const { path, rule, bound, got } of airFaults(air))
      disagree(context, path, { code: rule, parts: { bound, got } })
  })
  .meta({ id: 'StoredAir', description: 'Stored air of a robot, and what uses it' })
storedAir satisfies z.ZodType<StoredAir>
