import { stratified } from '../../random/index.ts'
import { Chances } from './chances.ts'
import { Named } from './pool.ts'
import { Rates } from './rates.ts'
import { drawCount, hyperpriors } from './settings.ts'
import { type SharePrior, Shares, sumOf } from './shares.ts'
import type { Measures, TeamData } from './teamData.ts'
import { type TripPrior, Trips } from './trips.ts'

/** Draws of the Beta between teams. */
export interface ChanceDraws {
  a: Float64Array
  b: Float64Array
}

/** Draws of the Dirichlet between teams. */
export interface ShareDraws {
  /** Counts by category, each by draw. */
  alpha: Float64Array[]
  /** Their sum by draw: what a team's prior is worth. */
  strength: Float64Array
}

/** Numbers of the streams that say which point of a grid a draw takes; goals add their own number. */
const streams = {
  rates: 0,
  goals: 1,
  pieces: 2,
  finish: 3,
  absent: 4,
  stops: 5,
  leaves: 6,
  trips: 7,
  success: 100,
  autonomous: 200,
}

const knownLevels = new Map<number, Float64Array>()

/** Always the same for a stream, hence kept. */
function levels(stream: number): Float64Array {
  let known = knownLevels.get(stream)
  if (!known) {
    known = stratified(drawCount, 7, stream)
    knownLevels.set(stream, known)
  }
  return known
}

/**
 * What all teams share, and draws of it: one each of every part, the same draw belonging together. Every part is worked out
 * when it is first asked for; in which order makes no difference.
 */
export class EventPriors {
  private readonly all: readonly TeamData[]
  private readonly measures: Measures
  private readonly kept = new Map<string, unknown>()

  constructor(all: readonly TeamData[], measures: Measures) {
    this.all = all
    this.measures = measures
  }

  get rateModel(): Rates {
    return this.keep('rate model', () => new Rates(this.all.map(({ attempts }) => attempts)))
  }

  get tripModel(): Trips {
    return this.keep('trip model', () => new Trips(this.all.map(({ trips }) => trips)))
  }

  get rates(): { shape: Float64Array; rate: Float64Array } {
    return this.keep('rates', () => {
      const drawn = Array.from(levels(streams.rates), (u) => this.rateModel.prior(u))
      return {
        shape: Float64Array.from(drawn, ({ shape }) => shape),
        rate: Float64Array.from(drawn, ({ rate }) => rate),
      }
    })
  }

  get trips(): TripPrior[] {
    return this.keep('trips', () => {
      const level = new Named('event trips')
      return Array.from(levels(streams.trips), (u, d) => this.tripModel.prior(u, level.normal(d)))
    })
  }

  get goals(): ShareDraws {
    return this.shares('goals', this.measures.goals.length, { of: (each) => each.goals, prior: hyperpriors.goals })
  }

  get pieces(): ShareDraws {
    return this.shares('pieces', this.measures.mostPerTrip, { of: (each) => each.pieces, prior: hyperpriors.pieces })
  }

  get finish(): ShareDraws {
    const { length } = this.measures.finishes
    return this.shares('finish', length, { of: (each) => each.finish, prior: hyperpriors.finish })
  }

  /** By goal. */
  get autonomous(): ShareDraws[] {
    const count = this.measures.mostInAuto + 1
    return this.measures.goals.map((_, k) => {
      const of = (each: TeamData) => each.autonomous[k] as Float64Array
      return this.shares('autonomous', count, { of, prior: hyperpriors.autonomous, k })
    })
  }

  /** Of the goal with this number. */
  success(k: number): ChanceDraws {
    return this.chances(`success ${k}`, streams.success + k, () => {
      const teams = this.all.map(({ success }) => success[k]!)
      return new Chances(teams, hyperpriors.success)
    })
  }

  get absent(): ChanceDraws {
    return this.rare('absent')
  }

  get stops(): ChanceDraws {
    return this.rare('stops')
  }

  get leaves(): ChanceDraws {
    return this.rare('leaves')
  }

  private rare(what: 'absent' | 'stops' | 'leaves'): ChanceDraws {
    const prior = what === 'leaves' ? hyperpriors.leaving : hyperpriors.rare
    return this.chances(what, streams[what], () => {
      const teams = this.all.map((each) => each[what])
      return new Chances(teams, prior)
    })
  }

  private chances(name: string, stream: number, make: () => Chances): ChanceDraws {
    return this.keep(name, () => {
      const model = make()
      const drawn = Array.from(levels(stream), (u) => model.prior(u))
      return { a: Float64Array.from(drawn, ({ a }) => a), b: Float64Array.from(drawn, ({ b }) => b) }
    })
  }

  private shares(
    what: 'goals' | 'pieces' | 'finish' | 'autonomous',
    categories: number,
    { of, prior, k = 0 }: { of: (data: TeamData) => Float64Array; prior: SharePrior; k?: number },
  ): ShareDraws {
    const name = `${what} ${k}`
    return this.keep(name, () => {
      const model = new Shares(categories, this.all.map(of), prior)
      const named = Array.from({ length: categories }, (_, c) => new Named(`event ${name} ${c}`))
      const alpha = named.map(() => new Float64Array(drawCount))
      const strength = new Float64Array(drawCount)
      for (const [d, u] of levels(streams[what] + k).entries()) {
        const drawn = model.prior(u, named, d)
        for (const [c, values] of alpha.entries()) values[d] = drawn[c] as number
        strength[d] = sumOf(drawn)
      }
      return { alpha, strength }
    })
  }

  private keep<Value>(name: string, make: () => Value): Value {
    if (this.kept.has(name)) return this.kept.get(name) as Value
    const made = make()
    this.kept.set(name, made)
    return made
  }
}
