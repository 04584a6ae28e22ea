import type { KeptAir } from '../../../../src/model/documents/records.ts'
import type { AirPlan } from '../../../../src/model/timing/air/airPlan.ts'
import { words } from '../../../words/catalogue.ts'
import { points, seconds } from '../../../words/format.ts'
import { isNothing } from '../../../words/verdict.ts'

type Possible = AirPlan & { possible: true }

/** When the working pressure is lost, of a teleop of so many seconds. */
export function lostWords(lostAt: number | null, teleop: number): string {
  const texts = words().air.answer
  if (lostAt === null) return texts.lasts
  return lostAt >= teleop ? texts.lostAtStart : texts.lost(seconds(lostAt))
}

/** The same by the cautious bound, as the end of that sentence. */
export function cautiousWords({ lostAtAdiabatic: lostAt }: Possible, teleop: number): string {
  const texts = words().air.answer
  if (lostAt === null) return texts.cautiousLasts
  return lostAt >= teleop ? texts.cautiousAtStart : texts.cautious(seconds(lostAt))
}

/** What one tank more is worth. */
export function secondTankWords({ points: { withThis, withOneTankMore } }: Possible): string {
  const texts = words().air.answer
  const worth = withOneTankMore - withThis
  return isNothing(worth) ? texts.secondNothing : texts.second(points(worth))
}

/** How long the pressure lasts with it; nothing where it lasts without. */
export function moreWords({ lostAt, lostWithOneTankMore: more }: Possible, teleop: number): string {
  const texts = words().air.answer
  if (lostAt === null || (more !== null && more >= teleop)) return ''
  return more === null ? texts.moreLasts : texts.moreLost(seconds(more))
}

/** When the working pressure is lost and what that costs, in one sentence for a record; null where it lasts. */
export function lossWords({ possible, lostAt, cost }: Omit<KeptAir, 'option'>, teleop: number): string | null {
  const texts = words().air.note
  if (!possible) return texts.wrong
  if (lostAt === null) return null
  const lost = lostWords(lostAt, teleop)
  return isNothing(cost) ? texts.lostNoCost(lost) : texts.lostAndCosts(lost, points(cost))
}

/** What stored air costs, in a sentence beside points that do not know of it; null where it costs nothing. */
export function costWords(answer: AirPlan): string | null {
  const texts = words().air.note
  if (!answer.possible) return texts.wrong
  if (answer.lostAt === null) return null
  const cost = answer.points.always - answer.points.withThis
  return isNothing(cost) ? texts.outNoCost : texts.costs(points(cost))
}
