import type { Game } from '../../../../../src/model/documents/types.ts'
import type { MadeOfTeam } from '../../../../../src/model/scouting/estimates/made.ts'
import type { Estimate, TeamEstimate } from '../../../../../src/model/scouting/estimates/types.ts'
import { words } from '../../../../words/catalogue.ts'
import { percent, points, seconds } from '../../../../words/format.ts'

/** A number of a team that can be opened; `of`: a goal's or a finish's id. */
export type Quantity =
  | { kind: 'points' | 'attempts' | 'trip' | 'finishPoints' | 'autonomousPoints' }
  | { kind: 'leaves' | 'stops' | 'absent' | 'departs' }
  | { kind: 'finish' | 'placed' | 'success' | 'autonomous'; of: string }

export const chances: readonly Quantity['kind'][] = ['leaves', 'stops', 'absent', 'finish', 'success']

/** Written as the number is everywhere. */
export function written({ kind }: Quantity): (value: number) => string {
  if (kind === 'trip' || kind === 'departs') return seconds
  return chances.includes(kind) ? percent : points
}

const goalName = ({ goals }: Game, id: string) => goals.find((goal) => goal.id === id)?.name ?? id

export function finishName({ finishes }: Game, id: string): string {
  return id === 'none' ? words().estimates.noFinish : (finishes.find((finish) => finish.id === id)?.name ?? id)
}

export function quantityName(game: Game, what: Quantity): string {
  const { estimates, made } = words()
  switch (what.kind) {
    case 'leaves':
    case 'stops':
    case 'absent':
      return estimates.chances[what.kind]
    case 'departs':
      return made.quantity.departs
    case 'finish':
      return estimates.chanceOf(finishName(game, what.of))
    case 'placed':
    case 'success':
    case 'autonomous':
      return made.quantity[what.kind](goalName(game, what.of))
    default:
      return estimates.columns[what.kind]
  }
}

/** The number itself; null where nothing is believed of it. */
export function estimateOf(of: TeamEstimate, what: Quantity): Estimate | null {
  switch (what.kind) {
    case 'trip':
      return of.trip?.median ?? null
    case 'finish':
      return of.finish[what.of] ?? null
    case 'placed':
    case 'success':
      return of.goals[what.of]?.[what.kind] ?? null
    case 'autonomous':
      return of.autonomous[what.of] ?? null
    default:
      return of[what.kind]
  }
}

/** What it is a weighted mean of; null for what is put together from other numbers. */
export function madeIn(made: MadeOfTeam, what: Quantity) {
  switch (what.kind) {
    case 'finish':
      return made.finish[what.of] ?? null
    case 'success':
    case 'autonomous':
      return made.goals[what.of]?.[what.kind] ?? null
    case 'placed':
    case 'points':
    case 'finishPoints':
    case 'autonomousPoints':
      return null
    default:
      return made[what.kind]
  }
}
