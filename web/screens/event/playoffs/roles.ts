import type { Option, Role } from '../../../../src/model/documents/types.ts'

/** What an observed robot may be asked to do: all its goals or one of them, with its finish or without, or marking one of theirs. */
export function rolesFor({ role }: Option, { marks }: { marks: { from: number } | null }): Role[] {
  const goals = role.goals.length > 1 ? [role.goals, ...role.goals.map((goal) => [goal])] : [role.goals]
  const finishes = role.finishes.length > 0 ? [role.finishes, []] : [role.finishes]
  const plain = goals.flatMap((some) =>
    finishes.map((ends): Role => ({ ...role, goals: some, finishes: ends, defend: null })),
  )
  const marking = marks
    ? ([0, 1, 2] as const).map((mark): Role => ({ ...role, defend: { mark, from: marks.from, until: 0 } }))
    : []
  return [...plain, ...marking]
}

/** A robot that slows its mark by so much, where nothing that was seen says more. */
export const defending = (option: Option, slowdown: number): Option => ({
  ...option,
  robot: {
    ...option.robot,
    defence: { ...option.robot.defence, slowdown: Math.max(slowdown, option.robot.defence.slowdown) },
  },
})
