import type { Option } from '../../documents/types.ts'
import { equal, Reckoning } from '../reckoning.ts'
import { blockOf } from '../run.ts'
import { Roster, type Setup } from '../setup.ts'
import { Simulator } from '../simulator.ts'
import { addSums, emptySums, layoutOf, type Sums, Tally } from '../tally.ts'
import { measures, type StatedRequest, type StatedSums } from './types.ts'

/** One option in its place. */
interface Seat {
  setup: Setup
  simulator: Simulator
  reckoning: Reckoning
}

/**
 * Plays the matches of every option, block by block: match r of each meets the same luck. What robots can do is kept, so
 * that further blocks cost their matches alone.
 * @throws ModelError as plans do, and where a bonus says nothing about the level
 */
export class StatedPlayer {
  private of = ''
  private roster: Roster | null = null
  private readonly seats = new Map<string, Seat>()

  /** Sums of the blocks `from` … `to − 1`. */
  play(request: StatedRequest, from: number, to: number): StatedSums[] {
    this.take(request)
    return Array.from({ length: to - from }, (_, k) => this.block(request, blockOf(from + k, request.replicates)))
  }

  /** Another game, field or seed begins anew; another option joins those that are known. */
  private take({ game, level, partners, opponents, seed }: StatedRequest): void {
    const of = JSON.stringify([game, level, partners, opponents, seed])
    if (this.of === of && this.seats.size < mostSeats) return
    this.of = of
    this.roster = new Roster(game)
    this.seats.clear()
  }

  private block(request: StatedRequest, [from, to]: [from: number, to: number]): StatedSums {
    const count = request.options.length
    const values = request.options.map(() => new Float64Array(measures.length * (to - from)))
    // One option after the other: the memory of a match is made ready for it once.
    const options = request.options.map((option, k): Sums => {
      const { setup, simulator, reckoning } = this.seat(request, option)
      const tally = new Tally(setup)
      for (let match = from; match < to; match++) {
        simulator.play(match)
        reckoning.of(simulator)
        tally.add(simulator, reckoning)
        values[k]!.set(valuesOf(reckoning), measures.length * (match - from))
      }
      return tally.sums
    })
    const squares = new Float64Array(pairsOf(count).length * measures.length)
    for (const [pair, [own, other]] of pairsOf(count).entries())
      for (const [at, value] of values[own]!.entries()) {
        const place = pair * measures.length + (at % measures.length)
        squares[place] = squares[place]! + (value - values[other]![at]!) ** 2
      }
    return { options, squares }
  }

  private seat(request: StatedRequest, option: Option): Seat {
    const { partners, opponents, seed, level } = request
    const key = JSON.stringify(option)
    const known = this.seats.get(key)
    if (known) return known
    const setup = this.roster!.setup([option, ...partners], opponents)
    const made = { setup, simulator: new Simulator(setup, seed), reckoning: new Reckoning(setup, level ?? null) }
    this.seats.set(key, made)
    return made
  }
}

/** Seats kept at most: an edit leaves the option before it behind. */
const mostSeats = 40

function valuesOf({ score, rankingPoints }: Reckoning): [win: number, rankingPoints: number, score: number] {
  const [ours, theirs] = [score[0] as number, score[1] as number]
  const win = ours - theirs > equal ? 1 : ours - theirs >= -equal ? 0.5 : 0
  return [win, rankingPoints[0] as number, ours]
}

/** Every two options once, by their numbers. */
export const pairsOf = (count: number): [number, number][] =>
  Array.from({ length: count }, (_, own) => own).flatMap((own) =>
    Array.from({ length: count - own - 1 }, (_, k): [number, number] => [own, own + 1 + k]),
  )

export function noSums(
  { game, options }: Pick<StatedRequest, 'game' | 'options'>,
  ground: Setup['ground'],
): StatedSums {
  const holds = game.goals.filter(({ award }) => award.kind === 'hold').length
  return {
    options: options.map(() => emptySums(layoutOf(ground).count, 4 * holds)),
    squares: new Float64Array(pairsOf(options.length).length * measures.length),
  }
}

/** Adds further matches, always in their order: rounding then never depends on who played. */
export function addStated(into: StatedSums, more: StatedSums): void {
  for (const [k, sums] of into.options.entries()) addSums(sums, more.options[k]!)
  for (const [k, square] of more.squares.entries()) into.squares[k] = into.squares[k]! + square
}
