import type { Path, Problem } from '../errors.ts'
import { quoted } from './checkIds.ts'
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
    problems.push({ path: [...path, 'id'], message: `A stage can not be called “${builtIn}”: every leg has that one` })
  } else if (all.find(({ id }) => id === stage.id) !== stage) {
    problems.push({ path: [...path, 'id'], message: `There are two stages with the id ${quoted(stage.id)}` })
  }
  stage.after.forEach((before, index) => {
    if (before === stage.id) {
      problems.push({ path: [...path, 'after', index], message: `The stage ${quoted(stage.id)} waits for itself` })
    } else if (before !== builtIn && !all.some(({ id }) => id === before)) {
      const message = `The stage ${quoted(stage.id)} waits for ${quoted(before)}, which is not a stage here`
      problems.push({ path: [...path, 'after', index], message })
    } else if (stage.after.indexOf(before) < index) {
      const message = `The stage ${quoted(stage.id)} names ${quoted(before)} twice`
      problems.push({ path: [...path, 'after', index], message })
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
  const message = `The stage ${quoted(circle[0]!)} waits for itself: ${circle.join(' after ')}`
  return [{ path: [...path, 'stages', index, 'after'], message }]
}
