import { evaluate } from './evaluate.ts'
import type { Network } from './network.ts'
import { convolve, later, mixture, notBefore, type Pmf, shift } from './pmf.ts'
import { type Recipe, recipeOf, stagesOf } from './recipe.ts'

/** Finish time of a part of the network when the drive takes `drive` grid steps. */
type Conditional = (drive: number) => Pmf

/**
 * The makespan with the drive's time known: the drive becomes a release time for the stages that wait for it, the
 * rest is taken apart as before, and the answers are mixed over the drive's distribution. Null where that is not
 * exact, i.e. where a release falls inside a part whose own start is random.
 */
export function conditionedOnDrive(
  network: Network,
  stages: readonly number[],
): ((times: readonly Pmf[]) => Pmf) | null {
  if (!stages.includes(0)) return null
  const others = stages.filter((stage) => stage !== 0)
  const recipe = recipeOf(network, others)
  if (!recipe || !conditionable(network, recipe)) return null
  return (times) => {
    const part = absolute(network, recipe, times)
    const drive = times[0] as Pmf
    const parts: { weight: number; of: Pmf }[] = []
    for (let i = 0; i < drive.mass.length; i++) {
      const weight = drive.mass[i] as number
      const at = drive.first + i
      // The drive itself must have ended, too, where nothing waits for it.
      if (weight > 0) parts.push({ weight, of: notBefore(part(at), at) })
    }
    return mixture(parts)
  }
}

const waits = (network: Network, stage: number) => network.before[stage]?.[0] === true

/** Stages of a recipe that can start before any other of it has ended. */
function openers(recipe: Recipe): number[] {
  if (recipe.kind === 'stage') return [recipe.stage]
  return recipe.kind === 'series' ? openers(recipe.parts[0] as Recipe) : recipe.parts.flatMap(openers)
}

function conditionable(network: Network, recipe: Recipe): boolean {
  if (recipe.kind === 'stage') return true
  if (recipe.kind === 'parallel') return recipe.parts.every((part) => conditionable(network, part))
  const [head, ...rest] = recipe.parts as [Recipe, ...Recipe[]]
  if (!conditionable(network, head)) return false
  let released = stagesOf(head).some((stage) => waits(network, stage))
  for (const part of rest) {
    if (released) return true
    const all = openers(part).every((stage) => waits(network, stage))
    if (!all && stagesOf(part).some((stage) => waits(network, stage))) return false
    released = all
  }
  return true
}

function absolute(network: Network, recipe: Recipe, times: readonly Pmf[]): Conditional {
  if (!stagesOf(recipe).some((stage) => waits(network, stage))) {
    const fixed = evaluate(recipe, times)
    return () => fixed
  }
  if (recipe.kind === 'stage') {
    const time = times[recipe.stage] as Pmf
    return (drive) => shift(time, drive)
  }
  if (recipe.kind === 'parallel') {
    const parts = recipe.parts.map((part) => absolute(network, part, times))
    return (drive) => parts.map((part) => part(drive)).reduce(later)
  }
  const [head, ...rest] = recipe.parts as [Recipe, ...Recipe[]]
  let so: Conditional = absolute(network, head, times)
  let released = stagesOf(head).some((stage) => waits(network, stage))
  for (const part of rest) {
    const before = so
    const own = evaluate(part, times)
    const releases = !released && openers(part).every((stage) => waits(network, stage))
    so = releases ? (drive) => convolve(notBefore(before(drive), drive), own) : (drive) => convolve(before(drive), own)
    released ||= releases
  }
  return so
}
