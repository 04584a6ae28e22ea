import type { Workspace } from '../kernel/index.ts'
import type { Problem } from './problem.ts'
import type { TimedLeg } from './timed.ts'

/** No leg: the robot stops for good, or (always at t) waits for t. */
export const stop = -1
export const wait = -2

/**
 * Actions by node, room and time left. A row is one room of one node over time left; in front of each row lie zeros, so
 * that a leg that would end after the buzzer reads 0 without a test.
 */
export interface Policy {
  readonly pad: number
  /** Length of a row. */
  readonly row: number
  /** actions[node][room · row + pad + t]: index into the node's legs, or stop, or wait. */
  readonly actions: readonly Int16Array[]
}

/** What the rest of teleop is worth by node, room and time left (points), in rows as a policy has them. */
export interface Values extends Omit<Policy, 'actions'> {
  /** values[node][room · row + pad + t] */
  readonly values: readonly Float64Array[]
}

/** A policy and what it is worth everywhere. */
export interface Table extends Policy, Values {}

/** A table while it is filled: the places of each node's values in a workspace, and those of its actions, counted in numbers of 2 bytes. */
export interface TablePlaces {
  readonly pad: number
  readonly row: number
  readonly values: readonly number[]
  /** None where nobody asks for the actions. */
  readonly actions: readonly number[]
}

export function tableIn(space: Workspace, problem: Problem, withActions: boolean): TablePlaces {
  const { graph, rooms, steps, timed } = problem
  const longest = Math.max(0, ...timed.filter((leg) => leg.leg.to >= 0).map((leg) => leg.shortest + leg.chance.length))
  // What the inner loops read or write beyond a row's ends stays within it.
  const pad = Math.min(longest, steps) + 8
  const row = pad + steps + 1 + 8
  const size = rooms.size * row
  return {
    pad,
    row,
    values: graph.nodes.map(() => space.take(size)),
    actions: withActions ? graph.nodes.map(() => 4 * space.take((size + 3) >> 2)) : [],
  }
}

/** Least chance index that can still end before the buzzer is cut: how much of a leg's chances fit in front of a row. */
export function fitting(chance: Float64Array, shortest: number, steps: number): number {
  return Math.max(0, Math.min(chance.length, steps - shortest + 1))
}

/** Σ_c f(c) · V(t − c) for one room row: the value of what follows a leg that begins with t steps left. */
export function follow(values: Float64Array, start: number, t: number, leg: TimedLeg): number {
  const { chance, shortest, late, lateAt } = leg
  const count = Math.min(chance.length, t - shortest + 1)
  let sum = 0
  const from = start + t - shortest
  for (let i = 0; i < count; i++) sum += (chance[i] as number) * (values[from - i] as number)
  for (let k = 0; k < late.length && (lateAt[k] as number) <= t; k++)
    sum += (late[k] as number) * (values[start + t - (lateAt[k] as number)] as number)
  return sum
}

/** Value at teleop's start, over the outcomes of autonomous. */
export function startValue(problem: Problem, table: Values): number {
  const { graph, rooms, steps, autonomous } = problem
  const values = table.values[graph.initial] as Float64Array
  return autonomous.outcomes.reduce(
    (sum, outcome) =>
      sum + outcome.probability * (values[rooms.index(outcome.room) * table.row + table.pad + steps] as number),
    0,
  )
}
