import type { Game, Robot } from '../../documents/types.ts'
import { kaplanMeier } from '../statistics/index.ts'
import { compared, type Pair } from './compared.ts'
import { fieldDistance, mixOf, Predicted } from './distance.ts'
import { learningOf } from './learning.ts'
import { readAt, tripForms } from './mixture.ts'
import { type Recordings, type Run, runsOf } from './runs.ts'
import { type Driven, shiftsFor } from './shift.ts'
import { type FieldTrip, sortedTrips } from './trips.ts'
import type { FieldDriver, FieldLeg, FieldReport, FieldRun } from './types.ts'
import { type PredictedLeg, type Way, Ways } from './ways.ts'

export interface FieldRequest extends Omit<Recordings, 'game'> {
  game: Game
  /** The design that it is put against. */
  robot: Robot
  /** Which runs count; all where nothing is said. */
  only?: 'match' | 'practice'
  /** How often the model plays the runs again to tell how far it lies off itself: 999, less often where there are many trips. */
  plays?: number
}

/** Thousands of trips need no more to be told from chance, and would take minutes. */
const playsFor = (trips: number): number => Math.max(99, Math.min(999, Math.floor(300_000 / trips)))

/** A trip that ended, with its share of the distribution of all. */
interface Ended extends FieldTrip {
  way: Way
  share: number
}

/**
 * What a design says of its trips beside what timelines say. Trips that were cut off hand their weight on to longer ones (Kaplan &
 * Meier), which leaves each trip that ended with a share; all means are taken with these shares, so that collecting and scoring add up
 * to the trip. The first trip of a match starts elsewhere and is none of these; the model's times have the design's form, as trips meet it.
 *
 * @throws ModelError where a leg of the design can not be computed
 */
export function fieldReport({ game, robot, only, plays, ...recordings }: FieldRequest): FieldReport {
  const runs = runsOf({ game, ...recordings }).filter(({ kind }) => only === undefined || kind === only)
  const sorted = sortedTrips(runs, new Ways(game, robot))
  const { trips, stretches } = sorted
  const { shares, beyond } = kaplanMeier(trips)
  const ended = trips.flatMap((trip, i): Ended[] =>
    trip.way && trip.ended ? [{ ...trip, way: trip.way, share: shares[i]! }] : [],
  )
  const forms = tripForms(robot.form.spread)
  const at = new Paired(runs, forms)
  const predicted = new Predicted(robot.form.spread)
  const whole = compared(ended.map((trip) => at.whole(trip)))
  const told = runs.map((run, index) => runOf(run, { index, runs, trips, ended, at }))
  return {
    runs: told,
    trips: ended.length,
    cutOff: trips.length - ended.length,
    leftOut: [...sorted.leftOut].map(([reason, count]) => ({ reason, trips: count })),
    sourceUnknown: sorted.sourceUnknown,
    defended: sorted.defended,
    whole: whole && {
      ...whole,
      ...fieldDistance(trips, stretches, { predicted, plays: plays ?? playsFor(trips.length) }),
      beyond,
    },
    parts: partsOf(ended, at),
    legs: legsOf(ended, at),
    drivers: driversOf(told, ended, at),
    distribution: whole ? inHalfSeconds(trips, shares, predicted) : [],
    seen: trips.map(({ seconds, ended, run }) => ({ seconds, ended, run })),
  }
}

/** Times of the field beside the model's, with form. */
class Paired {
  private readonly runs: readonly Run[]
  /** Mean of form and of its square, as trips meet it. */
  readonly factor: number
  private readonly square: number

  constructor(runs: readonly Run[], forms: readonly { factor: number; weight: number }[]) {
    this.runs = runs
    this.factor = forms.reduce((sum, { factor, weight }) => sum + factor * weight, 0)
    this.square = forms.reduce((sum, { factor, weight }) => sum + factor ** 2 * weight, 0)
  }

  private model(legs: readonly PredictedLeg[]) {
    const mean = legs.reduce((sum, leg) => sum + leg.mean, 0)
    const variance = legs.reduce((sum, leg) => sum + leg.variance, 0)
    return { mean: this.factor * mean, variance: this.square * (variance + mean ** 2) - (this.factor * mean) ** 2 }
  }

  private pair(field: number, legs: readonly PredictedLeg[], { share, run }: Ended): Pair {
    return { field, model: this.model(legs), share, run: this.runs[run]!.id }
  }

  whole = (trip: Ended): Pair => this.pair(trip.seconds, [trip.way.collect, trip.way.score], trip)
  collecting = (trip: Ended & { collecting: number }): Pair => this.pair(trip.collecting, [trip.way.collect], trip)
  scoring = (trip: Ended & { collecting: number }): Pair =>
    this.pair(trip.seconds - trip.collecting, [trip.way.score], trip)
}

type InParts = Ended & { collecting: number }

const inParts = (ended: readonly Ended[]) => ended.filter((trip): trip is InParts => trip.collecting !== null)

function partsOf(ended: readonly Ended[], at: Paired): FieldReport['parts'] {
  const trips = inParts(ended)
  const all = compared(trips.map(at.whole))
  const collecting = compared(trips.map(at.collecting))
  const scoring = compared(trips.map(at.scoring))
  if (!all || !collecting || !scoring) return null
  return {
    trips: trips.length,
    difference: all.difference.mean,
    collecting: collecting.difference.mean,
    scoring: scoring.difference.mean,
  }
}

interface Gathered {
  leg: PredictedLeg
  pairs: Pair[]
  driven: Map<PredictedLeg, number>
}

/** Each leg of the design that was seen, those that bring most of the difference first. */
function legsOf(ended: readonly Ended[], at: Paired): FieldLeg[] {
  const trips = inParts(ended)
  const total = trips.reduce((sum, { share }) => sum + share, 0)
  const legs = new Map<string, Gathered>()
  for (const trip of trips)
    for (const [leg, pair] of [
      [trip.way.collect, at.collecting(trip)],
      [trip.way.score, at.scoring(trip)],
    ] as const) {
      const key = JSON.stringify(leg.ref)
      const own: Gathered = legs.get(key) ?? { leg, pairs: [], driven: new Map() }
      legs.set(key, own)
      own.pairs.push(pair)
      own.driven.set(leg, (own.driven.get(leg) ?? 0) + trip.share)
    }
  return [...legs.values()]
    .flatMap(({ leg, pairs, driven }): FieldLeg[] => {
      const found = compared(pairs)
      if (!found) return []
      const share = pairs.reduce((sum, pair) => sum + (pair.share / total) * (pair.field - pair.model.mean), 0)
      const specs = [...driven].map(([{ spec }, part]): Driven => ({ spec, share: part }))
      return [{ ...found, leg: leg.ref, share, stages: shiftsFor(specs, found.difference.mean, at.factor) }]
    })
    .sort((a, b) => Math.abs(b.share) - Math.abs(a.share))
}

function runOf(
  { id, kind, driver }: Run,
  of: { index: number; runs: readonly Run[]; trips: readonly FieldTrip[]; ended: readonly Ended[]; at: Paired },
): FieldRun {
  const own = of.ended.filter(({ run }) => run === of.index)
  const mean = compared(own.map((trip) => of.at.whole(trip)))
  return {
    id,
    kind,
    driver,
    number: of.runs.slice(0, of.index + 1).filter((each) => each.driver === driver).length,
    trips: own.length,
    cutOff: of.trips.filter(({ run, ended }) => run === of.index && !ended).length,
    field: mean?.field.mean ?? null,
    model: mean?.model.mean ?? null,
  }
}

function driversOf(runs: readonly FieldRun[], ended: readonly Ended[], at: Paired): FieldDriver[] {
  return [...new Set(runs.map(({ driver }) => driver))].map((driver) => {
    const own = runs.filter((run) => run.driver === driver)
    return {
      driver,
      compared: compared(ended.filter(({ run }) => runs[run]!.driver === driver).map((trip) => at.whole(trip))),
      learning: learningOf(
        own.flatMap(({ number, trips, field, model }) =>
          field === null || model === null ? [] : [{ number, trips, ratio: field / model }],
        ),
      ),
    }
  })
}

function inHalfSeconds(
  trips: readonly FieldTrip[],
  shares: readonly number[],
  predicted: Predicted,
): [number, number][] {
  const mix = mixOf(trips, shares).map(([way, share]) => ({ table: predicted.table(way), share }))
  const cdf = (seconds: number) => mix.reduce((sum, { table, share }) => sum + share * readAt(table, seconds), 0)
  const all: [number, number][] = []
  for (let i = 0, below = 0; below < 0.999 && i < 400; i++) {
    const now = cdf((i + 1) / 2)
    if (now - below > 1e-6) all.push([i / 2 + 0.25, now - below])
    below = now
  }
  return all
}
