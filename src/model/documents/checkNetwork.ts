import type { Path, Problem } from '../errors.ts'
import { problem } from './sentences.ts'
import type { Stage, Trip } from './types.ts'

/** The stage that every network has, and that no other may be called. */
export const builtIn = 'drive'

/** Stages that wait for each other in a circle, from the first that is met again; null where there is none. */
function loop(stages: readonly Stage[]): string[] | null {
  const waitsFor = new Map(stages.map(({ id, after }) => [id, after]))
  const done = new Set<string>()
  const search = (id: string, open: readonly string[]): string[] | null => {
    if (open.includes(id)) return [...open.slice(open.indexOf(id)), id]
    if (done.has(id)) return null
    for (const before of waitsFor.get(id) ?? []) {
      const found = search(before, [...open, id])
      if (found) return found
    }
    done.add(id)
    return null
  }
  for (const { id } of stages) {
    const found = search(id, [])
    if (found) return found
  }
  return null
}

function checkStage(stage: Stage, path: Path, all: readonly Stage[]): Problem[] {
  const problems: Problem[] = []
  if (stage.id === builtIn) {
    problems.push(problem([...path, 'id'], 'builtInStage', { stage: builtIn }))
  } else if (all.find(({ id }) => id === stage.id) !== stage) {
    problems.push(problem([...path, 'id'], 'stageTwice', { stage: stage.id }))
  }
  stage.after.forEach((before, index) => {
    if (before === stage.id) {
      problems.push(problem([...path, 'after', index], 'waitsForItself', { stage: stage.id }))
    } else if (before !== builtIn && !all.some(({ id }) => id === before)) {
      problems.push(problem([...path, 'after', index], 'waitsForUnknown', { stage: stage.id, before }))
    } else if (stage.after.indexOf(before) < index) {
      problems.push(problem([...path, 'after', index], 'waitsTwice', { stage: stage.id, before }))
    }
  })
  return problems
}

/** A trip's stages must be different, known, not called `drive`, and not wait for each other in a circle. */
export function checkNetwork(trip: Trip, path: Path): Problem[] {
  if (!('stages' in trip)) return []
  const { stages } = trip
  const problems = stages.flatMap((stage, index) => checkStage(stage, [...path, 'stages', index], stages))
  if (problems.length > 0) return problems
  const circle = loop(stages)
  if (!circle) return []
  const index = stages.findIndex(({ id }) => id === circle[0])
  return [problem([...path, 'stages', index, 'after'], 'circle', { stages: circle })]
}
