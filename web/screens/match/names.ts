import type { Game, Option } from '../../../src/model/documents/types.ts'
import type { Side } from '../../charts/RobotSign.tsx'
import { words } from '../../words/catalogue.ts'
import type { Lineup } from '../../worker/protocol.ts'

/** 'R2': the alliance's letter and the position. */
export const signOf = (robot: number): string => {
  const { letters } = words().match
  return `${robot < 3 ? letters.ours : letters.theirs}${(robot % 3) + 1}`
}

/** 'Ours · Red'. */
export const sideName = (side: Side): string => {
  const { sides, colours, alliance } = words().match
  return alliance(sides[side], colours[side])
}

/** 'Red, position 2'. */
export const positionName = (side: Side, position: number): string => {
  const { colours, position: text } = words().match
  return text(colours[side], position + 1)
}

export const optionsOf = ({ ours, theirs }: Lineup): Option[] => [...ours, ...theirs]

/** 'R2 Kittiwake'. */
export const robotName = (lineup: Lineup, robot: number): string =>
  words().match.robot(signOf(robot), optionsOf(lineup)[robot]!.robot.name)

/** Levels for which some bonus of the game asks differently. */
export const levelsOf = (game: Game): string[] => [
  ...new Set(game.bonuses.flatMap(({ atLeast }) => (typeof atLeast === 'number' ? [] : Object.keys(atLeast)))),
]
