import type { CompareRequest } from '../../src/model/compare/types.ts'
import { withOverriddenRobot, withoutOverridden } from '../../src/model/documents/overrides.ts'
import type { ComparisonRecord, DesignRecord, OptionRecord } from '../../src/model/documents/records.ts'
import type { Game, Option, Robot } from '../../src/model/documents/types.ts'
import { words } from '../words/catalogue.ts'

/** An option with its robot: what the model computes. */
export const assembleOption = (record: OptionRecord, robot: Robot): Option => ({ ...record.option, robot })

/**
 * The stored comparison as a question to the model, with its overridden legs; belief is long work and asked for on its own.
 * Overridden points need what is computed first: see useOwnNumbers.
 */
export function assembleComparison(
  record: ComparisonRecord,
  game: Game,
  parts: readonly { option: OptionRecord; design: DesignRecord }[],
  belief = false,
): CompareRequest {
  const overrides = record.overrides ?? []
  const options = parts.map(({ option, design }) =>
    assembleOption(option, withOverriddenRobot(design.robot, overrides)),
  )
  const inputs = withoutOverridden(record.inputs, options, overrides)
  const breakEven = inputs.some(({ id }) => id === record.breakEven) ? record.breakEven : null
  return {
    game,
    options,
    inputs,
    ...(breakEven === null ? {} : { breakEven }),
    ...(belief ? { belief: { seed: record.seed } } : {}),
  }
}

/** A way to play that uses all that a robot can do, for a design that has no option yet. */
export function firstOption(game: Game, robot: Robot): Option {
  const auto = robot.autos[0] ?? null
  return {
    format: 1,
    id: `${robot.id}-all`,
    name: words().shell.firstWay,
    robot,
    start: auto?.starts[0] ?? game.starts[0]?.id ?? '',
    auto: auto?.id ?? null,
    role: {
      sources: game.sources.filter(({ id }) => id in robot.collect).map(({ id }) => id),
      goals: game.goals.filter(({ id }) => id in robot.score).map(({ id }) => id),
      finishes: game.finishes.filter(({ id }) => id in robot.finish).map(({ id }) => id),
      defend: null,
    },
    finish: { mode: 'best' },
    holdSeconds: Object.fromEntries(
      game.goals.filter(({ id, award }) => award.kind === 'hold' && id in robot.score).map(({ id }) => [id, 20]),
    ),
    adjust: [],
  }
}
