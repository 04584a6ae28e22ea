import { brokenLaws } from './conservation.ts'
import type { Ground } from './ground.ts'
import { blockSize, preciseEnough } from './precision.ts'
import { Reckoning } from './reckoning.ts'
import { matchReport } from './report.ts'
import { Roster, type Setup } from './setup.ts'
import { Simulator } from './simulator.ts'
import { addSums, emptySums, layoutOf, type Sums, Tally } from './tally.ts'
import type { MatchReport, MatchRequest } from './types.ts'

/** Plays matches of one set-up, block by block. */
export class Matches {
  readonly setup: Setup
  private readonly simulator: Simulator
  private readonly reckoning: Reckoning
  private readonly seed: number
  private readonly checked: boolean

  /**
   * @param of `checked` looks at every match whether it keeps the laws of conservation, which takes time
   * @throws ModelError as plans do, and where a bonus says nothing about the level
   */
  constructor(setup: Setup, of: { seed: number; level?: string | undefined; checked?: boolean }) {
    this.setup = setup
    this.seed = of.seed
    this.checked = of.checked ?? false
    this.simulator = new Simulator(setup, of.seed)
    this.reckoning = new Reckoning(setup, of.level ?? null)
  }

  /** Sums of the matches with the numbers `from` … `to − 1`. */
  play(from: number, to: number): Sums {
    const tally = new Tally(this.setup)
    for (let replicate = from; replicate < to; replicate++) {
      this.simulator.play(replicate)
      if (this.checked) this.check(replicate)
      this.reckoning.of(this.simulator)
      tally.add(this.simulator, this.reckoning)
    }
    return tally.sums
  }

  private check(replicate: number): void {
    const broken = brokenLaws(this.simulator)
    if (broken.length > 0) throw new Error(`match ${replicate} of seed ${this.seed}: ${broken.join('; ')}`)
  }
}

/** What the sums of blocks come to, added in the order of the blocks. */
export class Collected {
  readonly sums: Sums
  private readonly request: Pick<MatchRequest, 'replicates' | 'precision'>
  private readonly waiting = new Map<number, Sums>()
  private next = 0

  constructor(ground: Ground, request: Pick<MatchRequest, 'replicates' | 'precision'>) {
    const { count } = layoutOf(ground)
    this.request = request
    this.sums = emptySums(count, 4 * ground.holds.length)
  }

  /** Takes a block in whatever order they come; blocks after the last that is needed are left out. */
  add(block: number, sums: Sums): void {
    this.waiting.set(block, sums)
    for (let ready = this.waiting.get(this.next); ready && !this.done; ready = this.waiting.get(this.next)) {
      this.waiting.delete(this.next++)
      addSums(this.sums, ready)
    }
  }

  get done(): boolean {
    const { replicates, precision } = this.request
    return this.sums.matches >= replicates || preciseEnough(this.sums, precision)
  }
}

export const blocksOf = (replicates: number): number => Math.ceil(replicates / blockSize)

/** The matches of one block: its number first. */
export const blockOf = (block: number, replicates: number): [from: number, to: number] => [
  block * blockSize,
  Math.min(replicates, (block + 1) * blockSize),
]

/** Plays blocks of set-ups; the last ones are kept ready, since whoever plays a match in parts asks for it many times. */
export class BlockPlayer {
  private readonly kept = new Map<string, Matches>()

  /** Sums of the blocks `from` … `to − 1`. */
  play(request: MatchRequest, from: number, to: number): Sums[] {
    const { game, level, ours, theirs, seed } = request
    const key = JSON.stringify([game, level, ours, theirs, seed])
    const matches = this.kept.get(key) ?? new Matches(new Roster(game).setup(ours, theirs), { seed, level })
    this.kept.delete(key)
    this.kept.set(key, matches)
    if (this.kept.size > 2) this.kept.delete(this.kept.keys().next().value as string)
    return Array.from({ length: to - from }, (_, k) => matches.play(...blockOf(from + k, request.replicates)))
  }
}

/**
 * Plays a match many times.
 * @throws ModelError as plans do
 * @example simulate({ game, ours, theirs, replicates: 20_000, seed: 1 }).win.probability
 */
export function simulate(request: MatchRequest & { checked?: boolean }): MatchReport {
  const setup = new Roster(request.game).setup(request.ours, request.theirs)
  const matches = new Matches(setup, request)
  const collected = new Collected(setup.ground, request)
  for (let block = 0; !collected.done; block++)
    collected.add(block, matches.play(...blockOf(block, request.replicates)))
  return matchReport(setup.ground, collected.sums, request.seed)
}
