import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option, Trip } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import { inputWords } from '../../words/inputs.ts'
import { hardwareUnknowns } from './hardwareUnknowns.ts'

const between = (value: number): number => Math.min(1, Math.max(0, Math.round(value * 100) / 100))

/**
 * Numbers of the options that a team is usually unsure of, as inputs around what the documents say now; first what the
 * hardware of a time leaves unknown, in place of a guess about that time.
 */
export function candidates(documents: { game: Game; options: Option[] }): Input[] {
  const hardware = documents.options.flatMap(hardwareUnknowns)
  const told = new Set(hardware.flatMap(({ paths }) => paths))
  const found: Omit<Input, 'id'>[] = documents.options.flatMap((option, index) => {
    const at = `/options/${index}/robot`
    const { robot } = option
    const success = (path: string, value: number) => ({
      paths: [path],
      as: 'value' as const,
      low: between(value - 0.2),
      likely: between(value),
      high: between(value + 0.12),
      perMeasurement: Math.max(0.1, Math.round(Math.sqrt(value * (1 - value)) * 100) / 100),
    })
    const factor = (path: string) => ({
      paths: [path],
      as: 'factor' as const,
      low: 0.8,
      likely: 1,
      high: 1.5,
      perMeasurement: 0.3,
    })
    const times = (trip: Trip, path: string) =>
      'whole' in trip
        ? [factor(`${path}/whole`)]
        : trip.stages.map((_, stage) => factor(`${path}/stages/${stage}/duration`))
    return [
      ...Object.entries(robot.finish).flatMap(([id, trip]) => [
        success(`${at}/finish/${id}/success`, trip.success),
        ...times(trip, `${at}/finish/${id}`),
      ]),
      ...Object.entries(robot.score).flatMap(([id, entries]) =>
        entries.flatMap((trip, entry) => [
          success(`${at}/score/${id}/${entry}/success`, trip.success),
          ...times(trip, `${at}/score/${id}/${entry}`),
        ]),
      ),
      ...Object.entries(robot.collect).flatMap(([id, trip]) => times(trip, `${at}/collect/${id}`)),
      ...Object.keys(option.holdSeconds).map((goal) => ({
        paths: [`/options/${index}/holdSeconds/${goal}`],
        as: 'value' as const,
        low: Math.max(0, option.holdSeconds[goal]! * 0.5),
        likely: option.holdSeconds[goal]!,
        high: option.holdSeconds[goal]! * 1.8,
      })),
    ]
  })
  const seen = new Map<string, number>()
  const guessed = found
    .filter(({ paths }) => !told.has(paths[0]!))
    .map((input) => {
      const { about } = inputWords({ ...input, id: '-' }, documents)
      const count = (seen.get(about) ?? 0) + 1
      seen.set(about, count)
      // A goal can be scored at in several ways, whose numbers are called alike.
      return { ...input, id: count === 1 ? about : words().tradeoffs.unknowns.again(about, count) }
    })
  return [...hardware, ...guessed]
}
