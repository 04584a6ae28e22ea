import { Uniforms } from '../../src/model/random/index.ts'
import { normalQuantile } from '../../src/model/scouting/statistics/index.ts'
import type { Happening, Observation } from '../../src/model/scouting/types.ts'
import { game } from '../game.ts'

/** The demo's own robot, which is built as the design Shearwater. */
export const ownTeam = '90018'

const seed = 90_018

/** How a driver's trips take longer than the design says: at the first run, and after twice as many. */
const drivers = [
  { driver: 'Pia', slower: 1.22, doubling: 0.92 },
  { driver: 'Sven', slower: 1.12, doubling: 0.98 },
] as const

const { auto, pause, teleop } = game.clock
const begins = auto + pause
const tenth = (seconds: number) => Math.round(seconds * 10) / 10

/** Medians of a good driver (s) and geometric sd: near the design, but for the intake, which needs. */
const legs = {
  collect: { outer: [10.2, 1.3], channel: [11.6, 1.35] },
  score: { gantry: [7.5, 1.3], piers: [7.7, 1.3] },
} as const

/** Runs of practice on the evening before, five of each driver in turn: the whole of teleop, without a finish. */
export function practiceRuns(): { driver: string; minutes: number; of: Pick<Observation, 'timeline' | 'driver'> }[] {
  return Array.from({ length: 5 }, (_, run) =>
    drivers.map(({ driver, slower, doubling }, index) => {
      const draw = new Uniforms(seed, [index, run])
      const form = slower * doubling ** Math.log2(run + 1) * 1.04 ** normalQuantile(draw.next())
      return { driver, minutes: 12 * run + 6 * index, of: { driver, timeline: timelineOf(draw, form) } }
    }),
  ).flat()
}

function timelineOf(draw: Uniforms, form: number): Happening[] {
  const time = ([median, spread]: readonly [number, number]) => form * median * spread ** normalQuantile(draw.next())
  const timeline: Happening[] = [{ elapsed: tenth(begins + 6 + 3 * draw.next()), what: 'scored', goal: 'gantry' }]
  let elapsed = timeline[0]!.elapsed
  for (;;) {
    const source = draw.next() < 0.25 ? 'outer' : 'channel'
    elapsed += time(legs.collect[source])
    if (elapsed > begins + teleop) return timeline
    timeline.push({ elapsed: tenth(elapsed), what: 'collected', source })
    const goal = draw.next() < 0.6 ? 'gantry' : 'piers'
    elapsed += time(legs.score[goal])
    if (elapsed > begins + teleop) return timeline
    timeline.push({ elapsed: tenth(elapsed), what: draw.next() < 0.88 ? 'scored' : 'missed', goal })
  }
}
