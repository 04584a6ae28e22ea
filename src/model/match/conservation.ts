import { unlimited } from './ground.ts'
import type { Simulator } from './simulator.ts'

/**
 * What must hold after every match, whatever its luck: pieces come from somewhere, goals and sources keep their limits,
 * nobody waits or holds longer than the match lasts.
 * @returns a sentence for each law that is broken
 */
export function brokenLaws(match: Simulator): string[] {
  return [...robotsOf(match), ...sourcesOf(match), ...goalsOf(match), ...holdsOf(match)]
}

function robotsOf({ setup, ground, placed, taken, waited, defended }: Simulator): string[] {
  const broken: string[] = []
  for (const [i, { option }] of setup.players.entries()) {
    const sum = (of: Int32Array | Float64Array, from: number, to: number) => {
      let total = 0
      for (let p = from; p < to; p++) total += of[i * ground.count + p] as number
      return total
    }
    const goals = ground.sources + ground.goals
    const routine = option.robot.autos.find(({ id }) => id === option.auto)
    const given =
      (routine ? (routine.holding?.count ?? 0) : (option.robot.preload?.count ?? 0)) +
      (routine?.steps ?? []).reduce((a, { count }) => a + count, 0)
    const pieces = sum(placed, ground.sources, goals)
    const had = given + sum(taken, 0, ground.sources)
    if (pieces > had) broken.push(`robot ${i} placed ${pieces} pieces and had ${had}`)
    const finishes = sum(placed, goals, ground.count)
    if (finishes > 1) broken.push(`robot ${i} finished ${finishes} times`)
    const time = sum(waited, 0, goals) + (defended[i] as number)
    const most = ground.clock.end - ground.clock.teleop + 1e-6
    if (!(time >= -1e-9 && time <= most)) broken.push(`robot ${i} waited and marked for ${time} s of ${most} s`)
  }
  return broken
}

function sourcesOf({ ground, taken }: Simulator): string[] {
  const broken: string[] = []
  for (let p = 0; p < ground.sources; p++) {
    const stock = ground.stock[p] as number
    if (stock < 0) continue
    const every = ground.every[p] as number
    const most =
      stock + (Number.isFinite(every) ? Math.floor(ground.clock.end / every + 1e-9) : 0) * (ground.size[p] as number)
    const by = (robots: readonly number[]) =>
      robots.reduce((sum, i) => sum + (taken[i * ground.count + p] as number), 0)
    const groups = ground.shared[p]
      ? [[0, 1, 2, 3, 4, 5]]
      : [
          [0, 1, 2],
          [3, 4, 5],
        ]
    for (const robots of groups)
      if (by(robots) > most) broken.push(`${by(robots)} pieces were taken from ${ground.ids[p]}, which had ${most}`)
  }
  return broken
}

function goalsOf({ ground, counts, placed }: Simulator): string[] {
  const broken: string[] = []
  for (let a = 0; a < 2; a++)
    for (let p = ground.sources; p < ground.count; p++) {
      const count = counts[a * ground.count + p] as number
      const capacity = ground.capacity[p] as number
      if (capacity < unlimited && count > capacity)
        broken.push(`${ground.ids[p]} holds ${count} pieces and takes ${capacity}`)
      const own = [0, 1, 2].reduce((sum, k) => sum + (placed[(3 * a + k) * ground.count + p] as number), 0)
      if (own !== count) broken.push(`robots placed ${own} at ${ground.ids[p]}, which counts ${count}`)
    }
  return broken
}

function holdsOf({ ground, heldSeconds }: Simulator): string[] {
  const broken: string[] = []
  const { clock } = ground
  const most = clock.auto + clock.end - clock.teleop + 1e-6
  for (let h = 0; h < ground.holds.length; h++) {
    const held = (heldSeconds[2 * h] as number) + (heldSeconds[2 * h + 1] as number)
    if (held > most) broken.push(`${ground.ids[ground.holds[h] as number]} was held for ${held} s of ${most} s`)
  }
  return broken
}
