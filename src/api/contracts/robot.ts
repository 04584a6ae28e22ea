import * as z from 'zod'
import type { Drive, Robot } from '../../model/documents/types.ts'
import { storedAir } from './air.ts'
import { auto, load } from './auto.ts'
import { duration } from './duration.ts'
import { habit } from './habit.ts'
import { hardwareLink, mechanism } from './mechanism.ts'
import { byId, count, format, id, list, measure, name, probability } from './primitives.ts'
import { collectTrip, finishTrip, scoreEntry } from './trip.ts'

const drive = z
  .strictObject({
    topSpeed: measure(0.01, 50, 'm/s'),
    acceleration: measure(0.01, 200, 'm/s²'),
    deceleration: measure(0.01, 200, 'm/s²'),
    pace: duration.describe('Factor per leg on the drive’s time; never below 1'),
    times: list(
      z.strictObject({
        from: id.describe('Id of a start or spot'),
        to: id.describe('Id of a start or spot'),
        seconds: measure(0.01, 600, 's'),
      }),
      0,
      200,
      'Times from rest to rest that are known better than what is computed, the same both ways',
    ).optional(),
    hardware: hardwareLink.optional(),
  })
  .meta({ id: 'Drive' })
drive satisfies z.ZodType<Drive>

const perMatch = measure(0, 100, 'Expected number per match')
const perMinute = measure(0, 100, 'Expected number per minute of defending')

const budget = z.strictObject({
  mass: measure(0, 10_000, 'kg'),
  cost: measure(0, 1e9, 'Currency units'),
  hours: measure(0, 1e6, 'Hours of work'),
  readyBy: z.string().max(40).describe('Date'),
})

export const robot = z
  .strictObject({
    format,
    id,
    name,
    footprint: z
      .strictObject({ length: measure(0.05, 5, 'm'), width: measure(0.05, 5, 'm') })
      .describe('Bumpers included'),
    drive,
    form: z
      .strictObject({ spread: measure(1, 3, 'Geometric standard deviation of one factor per match on all times') })
      .describe('Battery, driver, damage'),
    carries: byId(count(1, 100, 'Pieces'), 20, 'Most pieces of a kind in hand'),
    preload: load.nullable(),
    collect: byId(collectTrip, 20, 'Per source; no entry: can not'),
    score: byId(list(scoreEntry, 1, 10, 'Ways to score there'), 20, 'Per goal; no entry: can not'),
    finish: byId(finishTrip, 20, 'Per finish; no entry: can not'),
    autos: list(auto, 0, 30, 'Autonomous routines'),
    reliability: z.strictObject({
      absent: probability.describe('Chance of not playing'),
      stops: probability.describe('Chance of stopping for good'),
    }),
    fouls: z.strictObject({ minorPerMatch: perMatch, majorPerMatch: perMatch }),
    defence: z.strictObject({
      slowdown: measure(0, 10, 'The mark’s drives take 1 + slowdown times as long'),
      minorPerMinute: perMinute,
      majorPerMinute: perMinute,
    }),
    habit: habit.optional().describe('An observed robot plays by habit'),
    budget: budget.optional(),
    mechanisms: list(mechanism, 0, 40, 'Mechanisms whose times come from their hardware').optional(),
    air: storedAir.optional(),
  })
  .meta({ id: 'Robot', description: 'A robot, drawn, built or observed' })
robot satisfies z.ZodType<Robot>
