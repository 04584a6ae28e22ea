import type { Game, Option } from '../documents/types.ts'
import { Planner, type Solved } from './planner.ts'
import type { PlanOptions, PlanReport } from './types.ts'
import type { TripWorth, WorthShare } from './worth.ts'

export { joinedWorth, type TripWorth, type WorthShare } from './worth.ts'

/** What is planned. */
export interface Planned {
  game: Game
  option: Option
  step?: PlanOptions['step']
}

/**
 * A plan in parts that several threads share: the report without worth, and worth of some trips at a time. The option
 * asked about last is kept solved, so that a further part of it begins at once.
 */
export class PlanParts {
  private kept: { key: string; planner: Planner; solved: Solved } | null = null

  report(planned: Planned, wanted: PlanOptions['with']): PlanReport {
    const { planner, solved } = this.solved(planned)
    return planner.report(planned.option, { with: wanted?.filter((name) => name !== 'worth') }, solved)
  }

  worth(planned: Planned, share: WorthShare): TripWorth[] {
    const { planner, solved } = this.solved(planned)
    return planner.worth(solved, share)
  }

  private solved({ game, option, step = 0.1 }: Planned): { planner: Planner; solved: Solved } {
    const key = JSON.stringify([step, game, option])
    if (this.kept?.key !== key) {
      const planner = new Planner(game, step)
      this.kept = { key, planner, solved: planner.solved(option, true) }
    }
    return this.kept
  }
}
