import type { KeptOverride, Override } from '../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { placeName, spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { day, moment, percent, points, seconds } from '../../words/format.ts'
import { optionName } from '../../words/verdict.ts'

export interface Documents {
  game: Game
  options: readonly Option[]
}

/** What an override is about. A drive whose ends are still to be chosen has none ('') yet. */
export type About =
  | Pick<Extract<Override, { kind: 'points' }>, 'kind' | 'option'>
  | Pick<Extract<Override, { kind: 'auto' }>, 'kind' | 'option'>
  | Pick<Extract<Override, { kind: 'pieces' }>, 'kind' | 'option' | 'goal'>
  | Pick<Extract<Override, { kind: 'leg' }>, 'kind' | 'robot' | 'leg'>
  | Pick<Extract<Override, { kind: 'travel' }>, 'kind' | 'robot' | 'from' | 'to'>
  | Pick<Extract<Override, { kind: 'success' }>, 'kind' | 'robot' | 'finish'>

/** What a number is that was or can be overridden. */
export function overriddenName(override: About, { game, options }: Documents): string {
  const texts = words().overrides
  if (override.kind === 'points') return texts.pointsOf(optionName(options, override.option))
  if (override.kind === 'pieces')
    return texts.piecesOf(optionName(options, override.option), placeName(game, override.goal))
  if (override.kind === 'auto') return texts.autoOf(optionName(options, override.option))
  const robot = options.find((option) => option.robot.id === override.robot)?.robot.name ?? override.robot
  if (override.kind === 'success') return texts.successOf(robot, placeName(game, override.finish))
  if (override.kind === 'travel')
    return override.from === ''
      ? texts.travelOf(robot)
      : texts.travelBetween(robot, spotName(game, override.from), spotName(game, override.to))
  const { leg } = override
  if (leg.kind === 'collect') return texts.legOf(robot, texts.collect(placeName(game, leg.source)))
  if (leg.kind === 'finish') return texts.legOf(robot, texts.finish(placeName(game, leg.finish)))
  return texts.legOf(robot, texts.score(placeName(game, leg.goal), leg.entry))
}

/** The own number, with its unit. */
export function ownWords(override: Override): string {
  const texts = words().overrides
  if ('points' in override) return texts.points(points(override.points))
  if (override.kind === 'success') return percent(override.probability)
  if (override.kind === 'pieces') return texts.pieces(points(override.pieces))
  if (override.kind === 'travel') return seconds(override.seconds)
  const { whole } = override
  if (whole.kind === 'fixed') return seconds(whole.seconds)
  if (whole.kind === 'range') return texts.range(seconds(whole.low), seconds(whole.likely), seconds(whole.high))
  return whole.kind === 'lognormal' ? seconds(whole.median) : seconds(whole.seconds[0]!)
}

/** What had been computed, with its unit. */
export function computedWords(override: KeptOverride): string {
  if ('points' in override) return words().overrides.points(points(override.computed))
  if (override.kind === 'pieces') return words().overrides.pieces(points(override.computed))
  return override.kind === 'success' ? percent(override.computed) : seconds(override.computed)
}

export const whyWords = ({ reason, who, on }: Override): string =>
  words().overrides.because(reason, who, on.includes('T') ? moment(on) : day(on))

/** That an answer holds overridden numbers, and which: behind what a number is said to be made from. Empty where none. */
export function overridesSource(kept: readonly KeptOverride[], documents: Documents): string {
  if (kept.length === 0) return ''
  const texts = words().overrides
  const lines = kept.map((one) =>
    texts.line(overriddenName(one, documents), computedWords(one), ownWords(one), one.reason, one.who),
  )
  return ` ${texts.contains(kept.length)} ${lines.join('; ')}.`
}
