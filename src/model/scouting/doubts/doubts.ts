import { medianOf } from '../statistics/index.ts'
import { type Agreement, agreementOf } from './agreement.ts'
import { groupsOf } from './groups.ts'
import { type ScoutEffect, scoutEffects, swappers } from './scouts.ts'
import { type Checked, type OneRecord, type Sides, sidesOf } from './sides.ts'
import { farthest, type Off, offOf, robustSd, unitOf } from './spread.ts'
import { type Swap, swapsOf } from './swapped.ts'
import type { Doubt, DoubtsRequest, Evidence } from './types.ts'
import { Usual } from './usual.ts'
import { type Mistaken, mistakenOf } from './wrongRobot.ts'

/** From where on something is told. Chosen by what planted errors show and false ones cost; the tests hold both. */
const tellAt = {
  /** Robust standard deviations, and things (pieces, or what they pay) that a difference has to be worth. */
  sds: 3.5,
  pieces: 4,
  autonomous: 3,
  finishes: 1,
  /** Pieces that a record has more at one goal than at the other: by itself, and as one of many of its scout. */
  moved: 3,
  scoutMoved: 2,
  /** ln of how much likelier an explanation makes what is seen. */
  swapped: 6,
  clear: 2,
  wrongRobot: 7.5,
  scoutSwaps: 8,
  /** Pieces per record, standard errors and records of a scout that counts too few or too many. */
  perRecord: 0.8,
  errors: 4,
  records: 5,
}

export interface Doubts {
  doubts: Doubt[]
  agreement: Agreement
}

interface Compared {
  side: Checked
  off: Off
}

/**
 * Records to be doubted, the worst first. Nothing is dropped for it: a lead looks and decides. One side of a match has at most one
 * doubt against its result, the likeliest explanation of what is off.
 */
export function doubtsOf(request: DoubtsRequest): Doubts {
  const sides = sidesOf(request)
  const compared = sides.sides.map((side): Compared => ({ side, off: offOf(side) }))
  const units = sides.categories.map((category) => unitOf(request.game, category))
  const sds = units.map((unit, k) =>
    robustSd(
      compared.flatMap(({ off }) => off[k] ?? []),
      unit.least,
    ),
  )
  const leasts = sides.categories.map(({ kind }, k) =>
    kind === 'finishes' ? tellAt.finishes * units[k]!.least : tellAt[kind] * units[k]!.most,
  )
  const middles = sides.categories.map((_, k) =>
    Math.max(units[k]!.least, medianOf(sides.sides.flatMap(({ official }) => official[k] ?? []))),
  )
  const goals = sides.goals.length
  const swaps = compared.map(({ side, off }) => swapsOf(side, off, sds, goals))
  const usual = new Usual(sides.records, goals)
  const byMatch = groupsOf(sides.records, ({ match }) => match)
  const ofSides = compared.flatMap(({ side, off }, index): Doubt[] => {
    const inMatch = byMatch.get(side.match.id) ?? []
    const mistaken = mistakenOf(side, { inMatch, off, sds, usual, goals })
    const told = ofSide({ side, off }, { sides, sds, middles, leasts, swaps: swaps[index] as Swap[], mistaken })
    return told ? [told] : []
  })
  const order = new Map(request.matches.map(({ id }, index) => [id, index]))
  const placeOf = ({ match }: Doubt) => (match === null ? -1 : (order.get(match) ?? 0))
  const doubts = [
    ...ofSides,
    ...disagreeing(sides, sds),
    ...ofScouts(sides, { compared, sds, swaps: swaps.flat().filter(({ moved }) => moved >= tellAt.scoutMoved) }),
  ].sort(
    (a, b) =>
      b.size - a.size ||
      placeOf(a) - placeOf(b) ||
      (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0) ||
      (a.records.join() < b.records.join() ? -1 : 1),
  )
  return { doubts, agreement: agreementOf(sides.records, sides.goals) }
}

const best = <Of extends { gain: number }>(all: readonly Of[]): Of | undefined =>
  all.reduce<Of | undefined>((found, each) => (found && found.gain >= each.gain ? found : each), undefined)

function ofSide(
  { side, off }: Compared,
  of: { sides: Sides; sds: number[]; middles: number[]; leasts: number[]; swaps: Swap[]; mistaken: Mistaken[] },
): Doubt | null {
  const { categories, goals } = of.sides
  const evidence = categories.flatMap((category, k): Evidence[] => {
    const value = off[k]
    if (value == null) return []
    return [
      {
        category,
        official: side.official[k] as number,
        scouted: side.scouted[k] as number,
        sds: value / (of.sds[k] as number),
      },
    ]
  })
  const about = { match: side.match.id, alliance: side.alliance, evidence, size: farthest(off, of.sds) }
  const one = ({ id, team, scout }: OneRecord) => ({ ...about, records: [id], teams: [team], scout })
  const swap = best(of.swaps.filter(({ moved }) => moved >= tellAt.moved))
  const mistaken = best(of.mistaken)
  const isSwap = swap !== undefined && swap.gain >= tellAt.swapped
  const isMistaken = mistaken !== undefined && mistaken.gain >= tellAt.wrongRobot
  if (isSwap && !(isMistaken && mistaken.gain > swap.gain)) {
    const [a, b] = swap.pair
    return { kind: 'swapped', ...one(swap.record), goals: [goals[a] as string, goals[b] as string] }
  }
  if (isMistaken)
    return {
      kind: 'wrongRobot',
      ...one(mistaken.record),
      teams: [mistaken.record.team, mistaken.fits],
      fits: mistaken.fits,
    }
  const differs = categories.some((_, k) => {
    const value = Math.abs(off[k] ?? 0)
    // Slips come with pieces: where there are many, more of them are usual.
    const usual = (of.sds[k] as number) * Math.sqrt(Math.max(1, (side.official[k] ?? 0) / (of.middles[k] as number)))
    return value >= tellAt.sds * usual && value >= (of.leasts[k] as number)
  })
  if (!differs) return null
  const { records } = side
  return {
    kind: 'differs',
    ...about,
    records: records.map(({ id }) => id),
    teams: [...new Set(records.map(({ team }) => team))],
  }
}

function disagreeing({ records, goals }: Sides, sds: readonly number[]): Doubt[] {
  const robots = groupsOf(records, ({ match, team }) => JSON.stringify([match, team]))
  return [...robots.values()].flatMap((own): Doubt[] => {
    const known = own.filter(({ pieces }) => pieces !== null)
    if (known.length < 2) return []
    const apart = goals.map((goal, k) => {
      const said = known.map(({ pieces }) => (pieces as number[])[k] as number)
      const [low, high] = [Math.min(...said), Math.max(...said)]
      return { goal, low, high, size: (high - low) / (sds[k] as number) }
    })
    const worst = apart.reduce((a, b) => (b.size > a.size ? b : a))
    if (worst.size < tellAt.sds || worst.high - worst.low < tellAt.pieces) return []
    const { match, alliance, team } = own[0] as OneRecord
    return [{ kind: 'disagree', match, alliance, teams: [team], records: known.map(({ id }) => id), ...worst }]
  })
}

function ofScouts(
  { goals, records }: Sides,
  { compared, sds, swaps }: { compared: Compared[]; sds: number[]; swaps: Swap[] },
): Doubt[] {
  const ids = (own: readonly OneRecord[]) => ({
    records: own.map(({ id }) => id),
    teams: [...new Set(own.map(({ team }) => team))],
  })
  const swapping = swappers(swaps).flatMap(({ scout, pair: [a, b], swaps: own, gain }): Doubt[] => {
    const clear = own.filter((each) => each.gain >= tellAt.clear)
    if (gain < tellAt.scoutSwaps || clear.length < 2) return []
    const names: [string, string] = [goals[a] as string, goals[b] as string]
    const about = ids(clear.map(({ record }) => record))
    // A gain of so much, as ln, is what a normal deviate of this size has over none.
    return [{ kind: 'scout', habit: 'swaps', scout, match: null, goals: names, ...about, size: Math.sqrt(2 * gain) }]
  })
  const swapped = new Set(swapping.flatMap((doubt) => (doubt.kind === 'scout' ? [doubt.scout] : [])))
  const off = goals.flatMap((goal, k) =>
    scoutEffects(compared, k, sds[k] as number).flatMap(({ scout, effect, z, records: n }: ScoutEffect): Doubt[] => {
      const told = Math.abs(effect) >= tellAt.perRecord && Math.abs(z) >= tellAt.errors && n >= tellAt.records
      if (!told || swapped.has(scout)) return []
      const own = ids(records.filter((each) => each.scout === scout))
      return [{ kind: 'scout', habit: 'offBy', scout, match: null, goal, perRecord: effect, ...own, size: Math.abs(z) }]
    }),
  )
  return [...swapping, ...off]
}
