import type { Game, Option, Robot } from '../src/model/documents/types.ts'
import { game } from './game.ts'
import { optionOf } from './resolve.ts'

/** A game with one option to plan: what the benchmarks measure. */
export interface Case {
  game: Game
  option: Option
}

const breakwater = optionOf('shearwater-best')

/** 2 sources, 3 goals (one of capacity 12), 2 finishes, 12 spots, one piece at a time, form 1. */
export const standard: Case = { game, option: withRobot({ form: { spread: 1 } }) }

/** The same with one thing made harder. */
export const variants = {
  capacity60: { game: withCapacity({ gantry: 60 }), option: standard.option },
  twoGoalsOf12: { game: withCapacity({ gantry: 12, piers: 12 }), option: standard.option },
  carries30: { game, option: withRobot({ form: { spread: 1 }, carries: { buoy: 30 } }) },
  form115: { game, option: withRobot({ form: { spread: 1.15 } }) },
} satisfies { [name: string]: Case }

function withRobot(change: Partial<Robot>): Option {
  return { ...breakwater, robot: { ...breakwater.robot, ...change } }
}

function withCapacity(capacities: { [goal: string]: number }): Game {
  return { ...game, goals: game.goals.map((goal) => ({ ...goal, capacity: capacities[goal.id] ?? goal.capacity })) }
}
