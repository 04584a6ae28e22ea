import type { Network } from './network.ts'

/** How the finish time of a set of stages comes about: series add, parallels take the latest. */
export type Recipe =
  | { kind: 'stage'; stage: number }
  | { kind: 'series'; parts: Recipe[] }
  | { kind: 'parallel'; parts: Recipe[] }

/**
 * The series-parallel decomposition of some of a network's stages, or null where there is none (an N among them).
 * A partial order is series-parallel exactly when either its comparability graph or the complement falls apart,
 * and so on down (Valdes, Tarjan & Lawler, SIAM J. Comput. 11:298–313, 1982).
 */
export function recipeOf(network: Network, stages: readonly number[]): Recipe | null {
  if (stages.length === 1) return { kind: 'stage', stage: stages[0] as number }
  const ordered = (a: number, b: number) => network.before[a]?.[b] === true || network.before[b]?.[a] === true
  const apart = components(stages, ordered)
  if (apart.length > 1) return combine(network, 'parallel', apart)
  const inSeries = components(stages, (a, b) => !ordered(a, b))
  if (inSeries.length > 1) {
    inSeries.sort((a, b) => (network.before[b[0] as number]?.[a[0] as number] ? -1 : 1))
    return combine(network, 'series', inSeries)
  }
  return null
}

function combine(network: Network, kind: 'series' | 'parallel', groups: number[][]): Recipe | null {
  const parts: Recipe[] = []
  for (const group of groups) {
    const part = recipeOf(network, group)
    if (!part) return null
    parts.push(part)
  }
  return { kind, parts }
}

function components(items: readonly number[], joined: (a: number, b: number) => boolean): number[][] {
  const left = new Set(items)
  const groups: number[][] = []
  for (const item of items) {
    if (!left.delete(item)) continue
    const group = [item]
    for (const member of group)
      for (const other of left) if (joined(member, other) && left.delete(other)) group.push(other)
    groups.push(group)
  }
  return groups
}

/** All stages of a recipe. */
export function stagesOf(recipe: Recipe): number[] {
  return recipe.kind === 'stage' ? [recipe.stage] : recipe.parts.flatMap(stagesOf)
}
