import type { GraphLeg, GraphNode, PlanGraph } from './graph.ts'

/** Names of legs that stay the same while times and chances of the same option change. */
export type LegNames = ReadonlySet<string>

export function nameOf(graph: PlanGraph, leg: GraphLeg): string {
  const { at, load } = graph.nodes[leg.from]!
  return JSON.stringify([at, load, leg.action])
}

/** The graph with these legs alone, and with the nodes that the start still leads to. */
export function pruned(graph: PlanGraph, kept: LegNames): PlanGraph {
  const nodes: GraphNode[] = []
  const legs: GraphLeg[] = []
  const places = new Map<number, number>()
  const place = (old: number): number => {
    const known = places.get(old)
    if (known !== undefined) return known
    places.set(old, nodes.length)
    nodes.push({ ...graph.nodes[old]!, legs: [] })
    return nodes.length - 1
  }
  const initial = place(graph.initial)
  // The map grows while it is walked: every node that a kept leg leads to is visited, too.
  for (const [old, from] of places) {
    for (const leg of graph.nodes[old]!.legs) {
      if (!kept.has(nameOf(graph, leg))) continue
      const own = { ...leg, id: legs.length, from, to: leg.to < 0 ? leg.to : place(leg.to) }
      legs.push(own)
      nodes[from]!.legs.push(own)
    }
  }
  return { nodes, legs, initial, goals: graph.goals }
}
