import { refusal } from '../documents/sentences.ts'
import type { Stage } from '../documents/types.ts'

/** The stage that every network has: one draw per leg, from the route. */
export const drive = 'drive'

/** A leg's stages as a partial order; index 0 is the drive, index i the i-th stage of the document after it. */
export interface Network {
  readonly ids: readonly string[]
  /** before[i] has bit j set (as a boolean) when stage j must end before stage i starts, directly or not. */
  readonly before: readonly (readonly boolean[])[]
  /** Stages that stage i names itself. */
  readonly after: readonly (readonly number[])[]
  /** Every stage after all that it waits for. */
  readonly order: readonly number[]
  /** Stages that nothing waits for. */
  readonly sinks: readonly number[]
}

/**
 * The partial order of a trip's stages.
 * @throws ModelError 'invalid' with the stage named: a loop, an unknown or repeated id, a stage called drive.
 */
export function networkOf(stages: readonly Stage[]): Network {
  const ids = [drive, ...stages.map((stage) => stage.id)]
  const index = new Map<string, number>()
  for (const [i, id] of ids.entries()) {
    if (index.has(id)) throw refusal('invalid', ['twiceInNetwork', { stage: id }])
    index.set(id, i)
  }
  const after = [
    [] as number[],
    ...stages.map((stage) =>
      stage.after.map((id) => {
        const found = index.get(id)
        if (found === undefined) throw refusal('invalid', ['waitsForNothing', { stage: stage.id, before: id }])
        return found
      }),
    ),
  ]
  const order = sorted(after, ids)
  const before = ids.map(() => ids.map(() => false))
  for (const i of order)
    for (const j of after[i] as number[]) {
      ;(before[i] as boolean[])[j] = true
      for (let k = 0; k < ids.length; k++) if (before[j]?.[k]) (before[i] as boolean[])[k] = true
    }
  const waitedFor = new Set(after.flat())
  return { ids, before, after, order, sinks: ids.map((_, i) => i).filter((i) => !waitedFor.has(i)) }
}

/** Whether every other stage comes before the stage or after it, so that whatever makes it later makes the last end later by as much. */
export const inSeries = ({ before }: Network, stage: number): boolean =>
  before.every((own, other) => other === stage || own[stage] || before[stage]?.[other])

function sorted(after: readonly (readonly number[])[], ids: readonly string[]): number[] {
  const order: number[] = []
  const state = ids.map(() => 0)
  const visit = (i: number) => {
    if (state[i] === 2) return
    if (state[i] === 1) throw refusal('invalid', ['loopInNetwork', { stage: ids[i] as string }])
    state[i] = 1
    for (const j of after[i] as number[]) visit(j)
    state[i] = 2
    order.push(i)
  }
  for (let i = 0; i < ids.length; i++) visit(i)
  return order
}
