import type { KeptAir } from '../../documents/records.ts'
import type { AirPlan } from './airPlan.ts'

/** The part of an option's air plan that a decision keeps: seconds left and points a match. */
export function keptAir(option: string, plan: AirPlan): KeptAir {
  if (!plan.possible) return { option, possible: false, lostAt: null, cost: 0 }
  return { option, possible: true, lostAt: plan.lostAt, cost: plan.points.always - plan.points.withThis }
}
