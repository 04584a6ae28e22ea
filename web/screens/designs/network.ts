import type { Stage } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import { schedule } from '../../../src/model/leg/criticality.ts'
import { networkOf } from '../../../src/model/leg/network.ts'

/** An id that no stage of the trip has. */
export const freeStageId = (stages: readonly Stage[]): string => {
  for (let number = stages.length + 1; ; number++)
    if (!stages.some(({ id }) => id === `stage-${number}`)) return `stage-${number}`
}

/**
 * Why a stage can not wait for another: the stages from the other one back to it, each waiting for the next. Null where
 * it can.
 */
export function waitingChain(stages: readonly Stage[], stage: string, asked: string): string[] | null {
  if (stage === asked) return [stage]
  const waitsFor = new Map(stages.map(({ id, after }) => [id, after]))
  const seen = new Set<string>()
  const search = (id: string): string[] | null => {
    if (id === stage) return [id]
    if (seen.has(id)) return null
    seen.add(id)
    for (const before of waitsFor.get(id) ?? []) {
      const found = search(before)
      if (found) return [id, ...found]
    }
    return null
  }
  return search(asked)
}

/** Without a stage: what waited for it waits for what it waited for. */
export const withoutStage = (stages: readonly Stage[], gone: string): Stage[] => {
  const removed = stages.find(({ id }) => id === gone)
  return stages
    .filter(({ id }) => id !== gone)
    .map((stage) => {
      if (!stage.after.includes(gone)) return stage
      const after = stage.after.flatMap((id) => (id === gone ? (removed?.after ?? []) : [id]))
      return { ...stage, after: [...new Set(after)] }
    })
}

/** A stage that is new: half a second of work, and not known better. */
export const freshStage = (stages: readonly Stage[], name: string): Omit<Stage, 'after'> => ({
  id: freeStageId(stages),
  name,
  duration: { kind: 'range', low: 0.3, likely: 0.5, high: 1 },
})

/** With a stage more between one and all that waited for it, so that nothing that was one after the other overlaps now. */
export const insertedAfter = (stages: readonly Stage[], before: string, fresh: Omit<Stage, 'after'>): Stage[] =>
  stages.flatMap((stage) => {
    const kept = { ...stage, after: stage.after.map((id) => (id === before ? fresh.id : id)) }
    return stage.id === before ? [kept, { ...fresh, after: [before] }] : [kept]
  })

const scheduledOrder = (stages: readonly Stage[]) => {
  try {
    return networkOf(stages)
  } catch {
    return null
  }
}

/**
 * The stage that comes just before (−1) or just after (1) a stage: of those
 * it waits for the one that ends last. Null where there is none, or the stages wait in a circle.
 */
export function neighbour(stages: readonly Stage[], of: string, direction: -1 | 1): string | null {
  const stage = stages.find(({ id }) => id === of)
  const around = stages.filter(({ id, after }) => (direction < 0 ? stage?.after.includes(id) : after.includes(of)))
  if (around.length === 0) return null
  const network = scheduledOrder(stages)
  if (!network) return null
  const times = schedule(network, [0, ...stages.map(({ duration }) => mean(duration))])
  const at = (id: string) => {
    const index = network.ids.indexOf(id)
    return direction < 0 ? -times.earliestFinish[index]! : times.earliestStart[index]!
  }
  return around.reduce((best, one) => (at(one.id) < at(best.id) ? one : best)).id
}

/**
 * Two stages change places: each waits for what the other waited for, and what waited for one waits for the other. The
 * network keeps its shape, so that no loop can come of it.
 */
export function exchanged(stages: readonly Stage[], a: string, b: string): Stage[] {
  const other = (id: string) => (id === a ? b : id === b ? a : id)
  const byId = new Map(stages.map((stage) => [stage.id, stage]))
  return stages.map((place) => ({ ...byId.get(other(place.id))!, after: place.after.map(other) }))
}
