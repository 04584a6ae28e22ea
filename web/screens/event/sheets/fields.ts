import type { Game } from '../../../../src/model/documents/types.ts'

/** A box of the paper sheet: the same on paper and on the keying screen, in the same order, with the same number. */
export type SheetField =
  | { key: string; kind: 'absent' | 'left' }
  | { key: string; kind: 'count'; goal: string; goalName: string; period: 'auto' | 'teleop'; what: 'scored' | 'missed' }
  | { key: string; kind: 'finish'; what: 'attempted' | 'achieved' }
  | { key: string; kind: 'foul'; what: 'minor' | 'major' }
  | { key: string; kind: 'lost' }
  | { key: string; kind: 'note' }

type Parts = Pick<Game, 'goals' | 'finishes' | 'leave'>

/** Whether a goal can be scored into in this period: a goal that awards nothing there is left off the sheet. */
function awards(goal: Game['goals'][number], period: 'auto' | 'teleop'): boolean {
  const { award } = goal
  if (award.kind === 'hold') return (period === 'auto' ? award.autoPerSecond : award.teleopPerSecond) > 0
  return award[period] > 0
}

/** The boxes of a game's sheet in the order in which they are written and keyed: as the match runs. */
export function sheetFields({ goals, finishes, leave }: Parts): SheetField[] {
  const counts = (period: 'auto' | 'teleop'): SheetField[] =>
    goals
      .filter((goal) => awards(goal, period))
      .flatMap(({ id, name }) =>
        (['scored', 'missed'] as const).map((what) => ({
          key: `${period}.${id}.${what}`,
          kind: 'count' as const,
          goal: id,
          goalName: name,
          period,
          what,
        })),
      )
  return [
    { key: 'absent', kind: 'absent' },
    ...(leave ? [{ key: 'left', kind: 'left' } as const] : []),
    ...counts('auto'),
    ...counts('teleop'),
    ...(finishes.length > 0
      ? (['attempted', 'achieved'] as const).map((what) => ({ key: `finish.${what}`, kind: 'finish' as const, what }))
      : []),
    { key: 'lost', kind: 'lost' },
    { key: 'foul.minor', kind: 'foul', what: 'minor' },
    { key: 'foul.major', kind: 'foul', what: 'major' },
    { key: 'note', kind: 'note' },
  ]
}
