import type { Input } from '../../../src/model/compare/types.ts'
import { overrideLabel, ownPointsOf, withOverriddenRobot } from '../../../src/model/documents/overrides.ts'
import type { DecisionRecord, OptionRecord, Override } from '../../../src/model/documents/records.ts'
import type { Game, Option, Robot } from '../../../src/model/documents/types.ts'
import { type Difference, differences } from '../../data/difference.ts'

export interface Documents {
  game: Game
  options: Option[]
}

/** The newest of each document that a record was made from; null where there is none any more. */
export interface Newest {
  game: { body: Game; revision: number } | null
  /** By id of the option. */
  ways: { [option: string]: { body: OptionRecord; revision: number } | null }
  /** By id of the robot. */
  robots: { [robot: string]: { body: Robot; revision: number } | null }
  inputs: Input[] | null
}

/** One document that is another one now. */
export interface Change {
  kind: 'game' | 'design' | 'option'
  id: string
  name: string
  revision: number
  differences: Difference[]
  /** The documents with this one as it is now. */
  apply(documents: Documents): Documents
}

/** The newest documents with the record's overrides in them, so that an override is no change. */
export function overridden(newest: Newest, { options, overrides = [] }: DecisionRecord['snapshot']): Newest {
  if (overrides.length === 0) return newest
  const robots = Object.fromEntries(
    Object.entries(newest.robots).map(([id, found]) => [
      id,
      found && { ...found, body: withOverriddenRobot(found.body, overrides) },
    ]),
  )
  const ways = Object.fromEntries(
    Object.entries(newest.ways).map(([id, found]) => {
      const labels = ownPointsOf(overrides, id).map(overrideLabel)
      const kept = options.find((option) => option.id === id)?.adjust.filter(({ label }) => labels.includes(label))
      if (!found || !kept || kept.length === 0) return [id, found]
      const option = { ...found.body.option, adjust: [...found.body.option.adjust, ...kept] }
      return [id, { ...found, body: { ...found.body, option } }]
    }),
  )
  return { ...newest, robots, ways }
}

/** Expected points with those that are overridden as they were set, whatever is computed. */
export const withOwnPoints = (means: Means, overrides: readonly Override[] = []): Means =>
  Object.fromEntries(
    Object.entries(means).map(([option, mean]) => {
      const set = overrides.find((one) => one.kind === 'points' && one.option === option)
      return [option, set?.kind === 'points' ? set.points : mean]
    }),
  )

const wayOf = ({ robot: _, ...way }: Option): Omit<Option, 'robot'> => way

/**
 * Which documents differ from the record's snapshot, in the order in which they are told: the game, then the designs,
 * then the ways to play, each in the order of the options. What is gone stays as the record has it.
 */
export function changesOf(snapshot: DecisionRecord['snapshot'], newest: Newest): Change[] {
  const game = newest.game
  const robots = [...new Map(snapshot.options.map(({ robot }) => [robot.id, robot])).values()]
  const changes: Change[] = [
    ...(game
      ? [
          {
            kind: 'game' as const,
            id: snapshot.game.id,
            name: game.body.name,
            revision: game.revision,
            differences: differences(snapshot.game, game.body),
            apply: (documents: Documents) => ({ ...documents, game: game.body }),
          },
        ]
      : []),
    ...robots.flatMap((robot) => {
      const now = newest.robots[robot.id]
      if (!now) return []
      const apply = ({ game: rules, options }: Documents) => ({
        game: rules,
        options: options.map((option) => (option.robot.id === robot.id ? { ...option, robot: now.body } : option)),
      })
      const found = differences(robot, now.body)
      return [
        {
          kind: 'design' as const,
          id: robot.id,
          name: now.body.name,
          revision: now.revision,
          differences: found,
          apply,
        },
      ]
    }),
    ...snapshot.options.flatMap((option) => {
      const now = newest.ways[option.id]
      if (!now) return []
      const apply = ({ game: rules, options }: Documents) => ({
        game: rules,
        options: options.map((one) => (one.id === option.id ? { ...now.body.option, robot: one.robot } : one)),
      })
      const found = differences(wayOf(option), now.body.option)
      return [
        {
          kind: 'option' as const,
          id: option.id,
          name: now.body.option.name,
          revision: now.revision,
          differences: found,
          apply,
        },
      ]
    }),
  ]
  return changes.filter((change) => change.differences.length > 0)
}

/** The snapshot with every change, and with each of them alone. */
export function variantsOf(snapshot: Documents, changes: readonly Change[]) {
  const kept = { game: snapshot.game, options: snapshot.options }
  return {
    kept,
    alone: changes.map((change) => change.apply(kept)),
    now: changes.reduce((documents, change) => change.apply(documents), kept),
  }
}

/** Expected points by option. */
export type Means = { readonly [option: string]: number }

export interface Moved {
  /** As it is written on the record. */
  written: Means
  /** What the program itself computes otherwise today from the same inputs. */
  program: Means
  /** What each change brings alone; null where it can not be computed without the others. */
  alone: (Means | null)[]
  /** What the changes bring only together: the rest. */
  together: Means
  now: Means
}

/** Splits what moved: the program, each change alone from the snapshot, and the rest. The parts add up to the whole. */
export function split(of: { written: Means; kept: Means; alone: readonly (Means | null)[]; now: Means }): Moved {
  const each = (value: (option: string) => number): Means =>
    Object.fromEntries(Object.keys(of.written).map((option) => [option, value(option)]))
  const alone = of.alone.map((means) => means && each((option) => means[option]! - of.kept[option]!))
  return {
    written: of.written,
    program: each((option) => of.kept[option]! - of.written[option]!),
    alone,
    together: each(
      (option) =>
        of.now[option]! - of.kept[option]! - alone.reduce((sum, means) => sum + (means ? means[option]! : 0), 0),
    ),
    now: of.now,
  }
}
