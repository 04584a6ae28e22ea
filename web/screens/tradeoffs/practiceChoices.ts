import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { practiceId, practiceOf } from '../../words/practice.ts'

/** What less practice may make worse: its name, a short one, and the numbers of the option that it is. */
export interface PracticeChoice {
  id: string
  name: string
  short: string
  paths: string[]
}

const escaped = (id: string): string => id.replaceAll('~', '~0').replaceAll('/', '~1')

/** The times and successes of one option that a team may have less practice in. */
export function practiceChoices(game: Game, options: readonly Option[], index: number): PracticeChoice[] {
  const text = words().practice
  const { robot } = options[index]!
  const at = `/options/${index}/robot`
  const pace = `${at}/drive/pace`
  const trips = [
    ...Object.entries(robot.collect).map(([id, trip]) => ({ path: `${at}/collect/${escaped(id)}`, trip })),
    ...Object.entries(robot.score).flatMap(([id, entries]) =>
      entries.map((trip, entry) => ({ path: `${at}/score/${escaped(id)}/${entry}`, trip })),
    ),
    ...Object.entries(robot.finish).map(([id, trip]) => ({ path: `${at}/finish/${escaped(id)}`, trip })),
  ]
  const times = trips.flatMap(({ path, trip }) =>
    'whole' in trip ? [`${path}/whole`] : trip.stages.map((_, stage) => `${path}/stages/${stage}/duration`),
  )
  const success = (id: string, name: (place: string) => string, paths: string[]): PracticeChoice => ({
    id,
    name: name(placeName(game, id)),
    short: name(placeName(game, id)),
    paths,
  })
  return [
    { id: 'pace', name: text.pace, short: text.short.pace, paths: [pace] },
    { id: 'times', name: text.times, short: text.short.times, paths: [pace, ...times] },
    ...Object.keys(robot.finish).map((id) => success(id, text.success, [`${at}/finish/${escaped(id)}/success`])),
    ...Object.entries(robot.score).map(([id, entries]) =>
      success(
        id,
        text.success,
        entries.map((_, entry) => `${at}/score/${escaped(id)}/${entry}/success`),
      ),
    ),
    ...Object.entries(robot.collect)
      .filter(([, { success: chance }]) => chance < 1)
      .map(([id]) => success(id, text.collecting, [`${at}/collect/${escaped(id)}/success`])),
  ]
}

/** Less practice as an ordinary input: a factor on the numbers that it makes worse. */
export function practiceInput(
  choice: Pick<PracticeChoice, 'short' | 'paths'>,
  of: { robot: string; perDay: number; days: readonly [number, number, number] },
): Input {
  const draft = {
    id: practiceId(words().practice.name(of.robot, choice.short), of.perDay),
    paths: choice.paths,
    as: 'factor' as const,
  }
  const { value } = practiceOf(draft)!
  const [low, likely, high] = of.days.map(value).sort((a, b) => a - b) as [number, number, number]
  return { ...draft, low, likely, high }
}
