import type { Input } from '../../../src/model/compare/types.ts'
import type { QuickLegName, QuickSheetRecord, QuickWay } from '../../../src/model/documents/quickSheet.ts'
import type { ComparisonRecord, DesignRecord, OptionRecord, Reference } from '../../../src/model/documents/records.ts'
import type { Game } from '../../../src/model/documents/types.ts'
import { optionOf } from '../../../src/model/sheet/index.ts'
import { idFrom } from '../../data/identity.ts'
import { words } from '../../words/catalogue.ts'

export interface Grown {
  way: QuickWay
  design: DesignRecord
  option: OptionRecord
}

/** A way as a design with whole trips, and as an option that plays it. */
export function grownFrom(game: Game, way: QuickWay): Grown {
  const { robot, ...option } = optionOf(game, way)
  const design: DesignRecord = { format: 1, game: game.id, robot: { ...robot, id: idFrom(way.name) } }
  return {
    way,
    design,
    option: { format: 1, game: game.id, design: design.robot.id, option: { ...option, id: idFrom(way.name) } },
  }
}

const legs: QuickLegName[] = ['collect', 'score', 'finish']

/** Where the times of a leg stand in the robot of the option with that index. */
function pathsOf({ way, design }: Grown, leg: QuickLegName, index: number): string[] {
  const { robot } = design
  const at = `/options/${index}/robot/${leg}`
  const escaped = (id: string) => id.replaceAll('~', '~0').replaceAll('/', '~1')
  if (leg === 'collect') return Object.keys(robot.collect).map((id) => `${at}/${escaped(id)}/whole`)
  if (leg === 'score') return Object.keys(robot.score).map((id) => `${at}/${escaped(id)}/0/whole`)
  return way.finish === null ? [] : [`${at}/${escaped(way.finish)}/whole`]
}

/** What rounds of guesses left unknown, as factors on the times: beliefs about their level. */
export function inputsOf(grown: readonly Grown[]): Input[] {
  const texts = words().quickSheet
  const found = grown.flatMap((each, index) =>
    legs.flatMap((leg): Input[] => {
      const { belief } = leg === 'finish' ? each.way.finishing : each.way[leg]
      const paths = pathsOf(each, leg, index)
      if (!belief || belief.likely <= 0 || belief.low === belief.high || paths.length === 0) return []
      const { low, likely, high } = belief
      const id = `${texts.grow.belief(each.way.name, texts.rounds.legs[leg])}`.slice(0, 96)
      return [{ id, paths, as: 'factor', low: low / likely, likely: 1, high: high / likely }]
    }),
  )
  const number = (index: number) => found.slice(0, index).filter(({ id }) => id === found[index]!.id).length
  return found
    .slice(0, 30)
    .map((input, index) => (number(index) === 0 ? input : { ...input, id: `${input.id} ${number(index) + 1}` }))
}

/** All ways side by side, with what the rounds of guesses left unknown. */
export function comparisonOf(sheet: QuickSheetRecord, game: Reference, grown: readonly Grown[]): ComparisonRecord {
  const inputs = inputsOf(grown)
  return {
    format: 1,
    id: idFrom(sheet.name),
    name: sheet.name,
    question: words().quickSheet.grow.question(sheet.name),
    game,
    options: grown.map(({ design, option }) => ({
      option: { id: option.option.id, revision: 1 },
      design: { id: design.robot.id, revision: 1 },
    })),
    inputs,
    breakEven: inputs[0]?.id ?? null,
    seed: 1,
    result: null,
  }
}
