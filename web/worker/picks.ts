import { playRound, refineTasks } from '../../src/model/picks/order/index.ts'
import { compareOffer, playoffChances, substitutions as threesOf } from '../../src/model/picks/playoffs/index.ts'
import { type PicksAsk, type PicksEvent, PreparedPicks, picksSeed as seed } from '../../src/model/picks/prepared.ts'
import type { Questions } from './protocol.ts'

let ready: PreparedPicks | null = null

/** Some seconds of a match of everybody are played once for an event as it is known. */
function readyFor(of: PicksEvent): PreparedPicks {
  if (ready?.key !== of.key) ready = new PreparedPicks(of)
  return ready
}

interface Asked {
  of: PicksEvent | { key: string }
  ask: PicksAsk
}

/** By its key alone only one that is ready. */
const known = (of: Asked['of']): PreparedPicks | null =>
  'robots' in of ? readyFor(of) : ready?.key === of.key ? ready : null

export function makeReady(of: PicksEvent): true {
  readyFor(of)
  return true
}

/** An order that is there at once, for whoever has just opened the page. */
export const picksRough = ({ of, ask }: Asked): Questions['picksRough']['answer'] => known(of)?.rough(ask) ?? null

/** The order as it is now, who will still be there at our next turn, and what there is to simulate. */
export function picksOrder({ of, ask }: Asked): Questions['picksOrder']['answer'] {
  const prepared = known(of)
  if (!prepared) return null
  const { worked, waiting } = prepared.order(ask)
  return { worked, waiting, tasks: refineTasks(worked, prepared.strengths) }
}

/** A round of matches of some choices. */
export const picksRound = ({ of, tasks, round }: Questions['picksRound']['ask']): Questions['picksRound']['answer'] =>
  tasks.map((task) => playRound(readyFor(of).playing, task, { round, seed }))

/** Accept or decline, when whoever is on turn invites us. */
export function picksOffer({
  of,
  ask,
  format,
  runs,
}: Questions['picksOffer']['ask']): Questions['picksOffer']['answer'] {
  const { strengths, selection, us, since } = readyFor(of).request(ask)
  return compareOffer({ strengths, selection, us, worth: since.worth, format, runs, seed })
}

export const playoffs = ({ of, ...request }: Questions['playoffs']['ask']): Questions['playoffs']['answer'] =>
  playoffChances({ strengths: readyFor(of).strengths, ...request, seed })

export const substitutions = ({
  of,
  alliance,
  ...request
}: Questions['substitutions']['ask']): Questions['substitutions']['answer'] =>
  threesOf({ strengths: readyFor(of).strengths, ...request, seed }, alliance)
