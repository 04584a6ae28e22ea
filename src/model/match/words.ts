import { philox } from '../random/index.ts'

/** What a robot's random numbers of one match are for: each has numbers of its own, whatever the others use up. */
export const purposes = { match: 0, autonomous: 1, leg: 2, retries: 3, habit: 4 } as const

/**
 * Random words of 32 bits as functions of seed, replicate, robot, purpose and leg: whoever asks for the same gets the same,
 * in whatever order, so that two set-ups meet the same luck.
 */
export class Words {
  private readonly key = new Uint32Array(2)
  private readonly counter = new Uint32Array(4)
  private readonly four = new Uint32Array(4)

  /** @param seed a whole number from 0 to 2⁵³ − 1 */
  constructor(seed: number) {
    this.key[0] = seed % 2 ** 32
    this.key[1] = Math.floor(seed / 2 ** 32)
  }

  begin(replicate: number): void {
    this.counter[3] = replicate
  }

  /**
   * Writes at least `count` words from place `at` on, in blocks of four.
   * @param name 8 · robot + purpose
   */
  write(into: Uint32Array, at: number, count: number, name: number, leg: number): void {
    const { counter, four } = this
    counter[1] = leg
    counter[2] = name
    for (let k = 0; k < count; k += 4) {
      counter[0] = k >> 2
      philox(counter, this.key, four)
      into[at + k] = four[0] as number
      into[at + k + 1] = four[1] as number
      into[at + k + 2] = four[2] as number
      into[at + k + 3] = four[3] as number
    }
  }
}

/** One 2³²-th: a word and a half times it lies strictly between 0 and 1. */
export const perWord = 2 ** -32
