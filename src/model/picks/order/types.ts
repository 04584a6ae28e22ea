/** A number that is not known: its mean over the common draws, and where it lies with 80 %. */
export interface Believed {
  mean: number
  low: number
  high: number
}

/** What our alliance is short of. `goal` and `finish` by id. */
export type Part = { kind: 'autonomous' } | { kind: 'goal'; goal: string } | { kind: 'finishing' }

export interface Need {
  part: Part
  /** Points a robot that ours bring less of it than robots of the other alliances. */
  short: Believed
  /** Chance, over the draws, that they do. */
  chance: number
}

export interface Choice {
  team: string
  /** Win probability of the alliance completed with it, against the others, a tie half. */
  win: Believed
  /** The same less that with the replacement. */
  gain: Believed
  /** Standard error of the gain's mean by the luck of the simulated matches. */
  error: number
  /** Chance, over the draws, that its gain is larger than that of the next in the order; null for the last. */
  better: number | null
  /** Our alliance with it, places that are left filled up. */
  alliance: string[]
  /** Places among the needs of those that it answers. */
  answers: number[]
  /** Simulated matches behind the mean; 0: the sibling alone. */
  simulated: number
}

export interface PickOrder {
  us: string
  /** Our alliance as it is. */
  alliance: string[]
  /** Whom gains are against; null where there is nobody to invite. */
  replacement: string | null
  /** It can be expected to be still free at our next turn. False: nobody will be, and it is the last of the order. */
  replacementFree: boolean
  choices: Choice[]
  needs: Need[]
  /** The alliances that we are compared against, as they are expected to be formed. */
  opponents: string[][]
}
